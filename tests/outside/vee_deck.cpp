#include "tests/outside/vee_deck.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "sim/units.h"
#include "tests/outside/deck.h"
#include "tests/outside/finite_element_cards.h"

namespace overbend::tests {

namespace {

constexpr int rows = 8;  // elements through the thickness

struct Model {
    Deck deck;
    Patch strip;
};

// The rim of a tool, one row of elements: its outer arc is edge 1.
Deck::Place rim(const Point& centre, double radius, double from, double to) {
    return [=](double u, double v) {
        const double a = (from + u * (to - from)) * degree, rho = radius * (1.0 - 0.4 * v);
        return Point{centre[0] + rho * std::cos(a), centre[1] + rho * std::sin(a)};
    };
}

void contact(Deck& deck, const VeeDeckBend& b) {
    deck.line("*SURFACE INTERACTION,NAME=TOUCH");
    deck.line("*SURFACE BEHAVIOR,PRESSURE-OVERCLOSURE=LINEAR");
    // Ten times the modulus over a thickness: a pressure of the yield stress sinks in by less than 1e-3 t.
    const double stiffness = 10.0 * finite_element_card(b.card).youngs_modulus / b.thickness;
    deck.line(std::to_string(stiffness));
    deck.line("*FRICTION");
    deck.line(std::to_string(b.friction) + "," + std::to_string(0.02 * stiffness));
    deck.line("*CONTACT PAIR,INTERACTION=TOUCH,TYPE=SURFACE TO SURFACE");
    deck.line("UPPER,NOSE");
    deck.line("*CONTACT PAIR,INTERACTION=TOUCH,TYPE=SURFACE TO SURFACE");
    deck.line("LOWER,SHOULDER");
}

void print_and_end(Deck& deck) {
    deck.line("*NODE PRINT,NSET=PUNCH,TOTALS=ONLY");
    deck.line("RF");
    deck.line("*NODE PRINT,NSET=END");
    deck.line("U");
    deck.line("*END STEP");
}

void press(Deck& deck, double travel) {
    deck.line("*STEP,NLGEOM,INC=5000");
    deck.line("*STATIC");
    deck.line("0.0005,1.,1.e-8,0.004");
    deck.line("*BOUNDARY");
    deck.line("PUNCH,2,2," + std::to_string(-travel));
    print_and_end(deck);
}

// All tools at once: on the way back the shoulders' friction flickers between sticking and slipping, and what
// stays of the bend does not depend on it.
void take_tools_away(Deck& deck) {
    deck.line("*STEP,NLGEOM,INC=5000");
    deck.line("*STATIC");
    deck.line("0.1,1.,1.e-6,0.2");
    deck.line("*MODEL CHANGE,TYPE=CONTACT PAIR,REMOVE");
    deck.line("UPPER,NOSE");
    deck.line("LOWER,SHOULDER");
    print_and_end(deck);
}

Model model(const VeeDeckBend& b) {
    Model m;
    Deck& deck = m.deck;
    const double t = b.thickness, length = 0.8 * b.die_opening + 0.5 * t;
    const int columns = static_cast<int>(std::lround(length / t * rows));
    m.strip = deck.add_patch(columns, rows, [&](double u, double v) {
        return Point{u * length, (v - 0.5) * t};
    });
    // Half an element of rim beyond the symmetry line, so that the surfaces face one another to the end.
    const Patch punch = deck.add_patch(40, 1, rim({0.0, 0.5 * t + b.nose_radius}, b.nose_radius, -93.0, 7.0));
    const Patch die = deck.add_patch(
        52, 1, rim({0.5 * b.die_opening, -0.5 * t - b.shoulder_radius}, b.shoulder_radius, 65.0, 195.0));
    deck.element_set("STRIP", m.strip.first_element, m.strip.last_element());
    deck.element_set("TOOLS", punch.first_element, die.last_element());
    deck.node_set("PUNCH", punch.nodes());
    deck.node_set("DIE", die.nodes());
    deck.node_set("MIDDLE", m.strip.column_of_nodes(0));
    deck.node_set("END", m.strip.row_of_nodes(rows, 2 * columns - 2, 2 * columns));
    deck.edge_surface("UPPER", m.strip, 3);
    deck.edge_surface("LOWER", m.strip, 1);
    deck.edge_surface("NOSE", punch, 1);
    deck.edge_surface("SHOULDER", die, 1);
    deck.plastic_section("STRIP", finite_element_card(b.card));
    deck.elastic_section("TOOLS", 200e3);
    contact(deck, b);
    // Before the tools touch and when they are gone, something must hold the strip: 0.01 N/mm does not count.
    deck.line("*ELEMENT,TYPE=SPRING1,ELSET=HOLD");
    deck.line(std::to_string(die.last_element() + 1) + "," + std::to_string(m.strip.node(0, rows)));
    deck.line("*SPRING,ELSET=HOLD");
    deck.line("2");
    deck.line("0.01");
    deck.line("*BOUNDARY");
    deck.line("MIDDLE,1,1,0.");
    deck.line("DIE,1,2,0.");
    deck.line("PUNCH,1,1,0.");
    return m;
}

Model whole(const VeeDeckBend& b) {
    Model m = model(b);
    press(m.deck, b.travel);
    take_tools_away(m.deck);
    return m;
}

}  // namespace

std::string vee_deck(const VeeDeckBend& bend) {
    return whole(bend).deck.text();
}

VeeDeckResult run_vee_deck(const VeeDeckBend& bend) {
    const Model m = whole(bend);
    const std::vector<PrintedState> states = run_deck(m.deck.text());
    const int columns = m.strip.columns;
    const auto included = [&](const PrintedState& s) {
        const int inner = m.strip.node(2 * columns - 2, rows), outer = m.strip.node(2 * columns, rows);
        const Point a = s.displacement.at("END").at(inner), c = s.displacement.at("END").at(outer);
        const double dx = m.deck.place_of(outer)[0] - m.deck.place_of(inner)[0] + c[0] - a[0];
        return 180.0 - 2.0 * std::atan2(c[1] - a[1], dx) / degree;
    };
    VeeDeckResult result;
    for (const PrintedState& s : states) {
        const double force = -2.0 * s.force.at("PUNCH").at(0)[1];  // of both halves
        if (s.time > 1.0 + 1e-9) continue;
        result.peak_force = std::max(result.peak_force, force);
        result.end_force = force;
        result.included_loaded = included(s);
    }
    if (states.empty() || std::abs(states.back().force.at("PUNCH").at(0)[1]) > 1e-6)
        throw std::runtime_error("the tools are not off");
    result.included_free = included(states.back());
    return result;
}

}  // namespace overbend::tests
