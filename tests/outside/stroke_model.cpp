#include "tests/outside/stroke_model.h"

#include <cmath>
#include <stdexcept>

#include "tests/outside/finite_element_cards.h"

namespace overbend::tests {

namespace {

const tool::RigidTool& tool_of(const Subject& s, tool::Role role) {
    for (const tool::RigidTool& t : s.stroke.scene.tools)
        if (t.role == role) return t;
    throw std::logic_error("a tool is missing");
}

Point point(const tool::Vec2& v) {
    return {v.x(), v.y()};
}

// Where the deck's strip lies at the start: its left end, and its turn.
StripPlacing placing(const Subject& s) {
    const strip::StripState& strip = s.stroke.scene.strip;
    const double half = 0.5 * strip.blank_position.back();
    if (s.begin == 0.0) return {{strip.x.front() + (s.half ? half : 0.0), strip.y.front()}, 0.0};
    return {{s.begin_middle[0] - half * std::cos(s.begin_turn),
             s.begin_middle[1] - half * std::sin(s.begin_turn)},
            s.begin_turn};
}

// Columns of a whole strip from those of its right half, which begin in the middle.
std::vector<double> mirrored_columns(const std::vector<double>& right) {
    std::vector<double> all;
    for (std::size_t i = right.size(); i-- > 1;) all.push_back(right.back() - right[i]);
    for (const double b : right) all.push_back(right.back() + b);
    return all;
}

// The other half of a strip that begins on the symmetry line.
BentShape with_other_half(const BentShape& right) {
    BentShape s;
    const double half = right.length();
    const auto other = [](const Place& p) { return Place(-p.x(), p.y()); };
    for (std::size_t i = right.blank.size(); i-- > 1;) {
        s.blank.push_back(half - right.blank[i]);
        s.turn.push_back(-right.turn[i]);
        s.upper.push_back(other(right.upper[i]));
        s.lower.push_back(other(right.lower[i]));
    }
    for (std::size_t i = 0; i < right.blank.size(); ++i) {
        s.blank.push_back(half + right.blank[i]);
        s.turn.push_back(right.turn[i]);
        s.upper.push_back(right.upper[i]);
        s.lower.push_back(right.lower[i]);
    }
    return s;
}

}  // namespace

StrokeModel build_deck(const Subject& s, const DeckMesh& mesh) {
    StrokeModel m;
    m.half = s.half;
    Deck& deck = m.deck;
    const strip::StripState& strip = s.stroke.scene.strip;
    const double t = strip.thickness, half = 0.5 * strip.blank_position.back(), finest = t / mesh.rows;
    m.blank = graded_columns(half, s.fine, s.reach, finest, 4.0 * finest);
    if (!s.half) m.blank = mirrored_columns(m.blank);
    m.strip = add_strip(deck, m.blank, t, mesh.rows, placing(s));
    const tool::RigidTool &punch = tool_of(s, tool::Role::punch), &die = tool_of(s, tool::Role::die);
    const std::vector<int> punch_nodes =
        add_tool(deck, "PUNCH", punch.outline, {punch.position.x(), punch.position.y() - s.begin}, s.punch);
    const std::vector<int> die_nodes = add_tool(deck, "DIE", die.outline, point(die.position), s.die);

    deck.element_set("STRIP", m.strip.first_element, m.strip.last_element());
    deck.plastic_section("STRIP", finite_element_card(s.card));
    deck.node_set("PUNCHNODES", punch_nodes);
    deck.node_set("DIENODES", die_nodes);
    deck.node_set("STRIPNODES", m.strip.nodes());
    deck.node_set("FRONT", m.strip.front_nodes());
    deck.node_set("MIDDLE", m.strip.column_of_nodes(0));
    face_surface(deck, "UPPER", m.strip, Face::upper, 0, m.strip.columns - 1);
    face_surface(deck, "LOWER", m.strip, Face::lower, 0, m.strip.columns - 1);
    touch(deck, "TOUCH", {{"UPPER", "PUNCH"}, {"LOWER", "DIE"}}, s.stroke.scene.friction);

    // Before the tools touch, and when they are gone, something must hold the strip; this does not count
    // against a bend's forces.
    const int end = m.strip.columns, row = mesh.rows / 2;
    if (s.half)
        hold_softly(deck, {{m.strip.node(0, row, 0), 2}}, 0.01);
    else
        hold_softly(deck, {{m.strip.node(0, row, 0), 2}, {m.strip.node(end, row, 0), 2}}, 0.01);
    const int middle = s.half ? 0 : end / 2;
    deck.node_set("CENTRE", {m.strip.node(middle, row, 0), m.strip.node(middle, row, 1)});
    deck.node_set("TOPCENTRE", {m.strip.node(middle, mesh.rows, 0), m.strip.node(middle, mesh.rows, 1)});
    deck.line("*BOUNDARY");
    deck.line("STRIPNODES,3,3,0.");
    deck.line("DIENODES,1,3,0.");
    deck.line("PUNCHNODES,1,1,0.");
    deck.line("PUNCHNODES,3,3,0.");
    // A strip that is point-symmetric with its tools has its middle in the middle between them.
    deck.line(s.half ? "MIDDLE,1,1,0." : "CENTRE,1,2,0.");
    return m;
}

void print_and_end_step(Deck& deck, const std::string& pressed) {
    deck.line("*NODE PRINT,NSET=" + pressed + ",TOTALS=ONLY");
    deck.line("RF");
    deck.line("*NODE PRINT,NSET=FRONT");
    deck.line("U");
    deck.line("*END STEP");
}

void press(StrokeModel& m, double move) {
    m.deck.line("*STEP,NLGEOM,INC=5000");
    m.deck.line("*STATIC");
    m.deck.line("0.0005,1.,1.e-8,0.01");
    m.deck.line("*BOUNDARY");
    m.deck.line("PUNCHNODES,2,2," + std::to_string(-move));
    if (!m.half) m.deck.line("CENTRE,2,2," + std::to_string(-0.5 * move));
    print_and_end_step(m.deck, "PUNCHNODES");
}

void take_away(StrokeModel& m, const std::vector<std::pair<std::string, std::string>>& pairs) {
    m.deck.line("*STEP,NLGEOM,INC=5000");
    m.deck.line("*STATIC");
    m.deck.line("0.1,1.,1.e-6,0.2");
    m.deck.line("*MODEL CHANGE,TYPE=CONTACT PAIR,REMOVE");
    for (const auto& [nodes, faces] : pairs) m.deck.line(nodes + "," + faces);
    print_and_end_step(m.deck, "PUNCHNODES");
}

void draw_apart(StrokeModel& m, double move, double apart) {
    Deck& deck = m.deck;
    deck.line("*STEP,NLGEOM,INC=5000");
    deck.line("*STATIC");
    deck.line("0.0005,1.,1.e-8,0.1");
    deck.line("*BOUNDARY,FIXED");
    deck.line("CENTRE,2,2");
    deck.line("TOPCENTRE,1,1");
    deck.line("*BOUNDARY");
    deck.line("PUNCHNODES,2,2," + std::to_string(apart - move));
    deck.line("DIENODES,2,2," + std::to_string(-apart));
    print_and_end_step(deck, "PUNCHNODES");
}

BentShape shape_of(const StrokeModel& m, const PrintedState& state) {
    const BentShape shape = bent_shape(m.deck, m.strip, m.blank, state.displacement.at("FRONT"));
    return m.half ? with_other_half(shape) : shape;
}

}  // namespace overbend::tests
