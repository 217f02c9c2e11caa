#include "tests/outside/hem_deck.h"

#include <cmath>
#include <stdexcept>

#include "scenes/job/run/strip_bends.h"
#include "sim/units.h"
#include "tests/outside/finite_element_cards.h"
#include "tests/outside/stroke_model.h"
#include "tests/stop_at.h"

namespace overbend::tests {

namespace {

constexpr const char* card = "A1";
constexpr double first_travel = 3.7;   // of the V bend
constexpr double plate_at = 7.5;       // the flat tool's face before it moves, from the plane of symmetry
constexpr double away = 4.0;           // how far punch and die are taken away
constexpr double closed = 2.1;         // between the faces at the end
constexpr double plate_near = 3.3;     // before it touches
constexpr double flat_friction = 0.0;  // see hem_deck.h

job::HemBend hem_bend() {
    job::HemBend bend;
    bend.material = finite_element_card(card);
    bend.hem = 6.5;
    bend.flange = bend.hem;
    bend.die_opening = 6.0;
    bend.first_free = 130.0 * degree;
    return bend;
}

Subject vee_subject() {
    const job::HemBend bend = hem_bend();
    Subject s{job::hem_first_stroke(bend), card, first_travel};
    s.half = true;
    s.fine = {0.0};
    s.punch = {{-0.2, 0.0}, {4.0, 9.0}};
    s.die = {{-0.2, -8.0}, {7.5, 1.0}};
    return s;
}

tool::ArcOutline upright_block(double left, double right) {
    return tool::round_corners(
        {{{left, -16.0}, 0.0}, {{right, -16.0}, 0.0}, {{right, 8.0}, 0.0}, {{left, 8.0}, 0.0}});
}

// A step that moves tools to displacements: a set of nodes, a direction, the displacement.
struct Move {
    const char* nodes;
    int direction;
    double to;
};
// fixed: what stays where it is from this step on.
void move_tools(Deck& deck, const char* increments, const std::vector<Move>& moves,
                const char* fixed = nullptr) {
    deck.line("*STEP,NLGEOM,INC=5000");
    deck.line("*STATIC");
    deck.line(increments);
    if (fixed) {
        deck.line("*BOUNDARY,FIXED");
        deck.line(fixed);
    }
    deck.line("*BOUNDARY");
    for (const Move& m : moves)
        deck.line(std::string(m.nodes) + "," + std::to_string(m.direction) + "," +
                  std::to_string(m.direction) + "," + std::to_string(m.to));
    print_and_end_step(deck, "PLATENODES");
}

StrokeModel hem_model(const DeckMesh& mesh) {
    const Subject s = vee_subject();
    StrokeModel m = build_deck(s, mesh);
    Deck& deck = m.deck;
    const std::vector<int> plate = add_tool(deck, "PLATE", upright_block(plate_at, plate_at + 2.0),
                                            {0.0, 0.0}, {{plate_at - 0.1, -15.9}, {plate_at + 0.1, 7.9}});
    const std::vector<int> wall =
        add_tool(deck, "WALL", upright_block(-2.0, 0.0), {0.0, 0.0}, {{-0.1, -15.9}, {0.1, 7.9}});
    deck.node_set("PLATENODES", plate);
    deck.node_set("WALLNODES", wall);
    face_surface(deck, "INNER", m.strip, Face::upper, 1, m.strip.columns - 1);
    touch(deck, "FLAT", {{"LOWER", "PLATE"}}, flat_friction);
    touch(deck, "MIRROR", {{"INNER", "WALL"}}, 0.0);
    deck.line("*BOUNDARY");
    deck.line("WALLNODES,1,3,0.");
    deck.line("PLATENODES,1,3,0.");
    press(m, s.travel);
    // Tools are moved away from the strip, the die sideways: taken out of the deck all at once, they leave a
    // strip that is bent so far out of balance by more than the solver finds its way back from. Its middle
    // stays at its height from here on: flat tools without friction do not move it along themselves.
    move_tools(deck, "0.0005,1.,1.e-8,0.05",
               {{"PUNCHNODES", 2, away}, {"DIENODES", 1, away}, {"PLATENODES", 1, plate_near - plate_at}},
               "CENTRE,2,2");
    move_tools(deck, "0.001,1.,1.e-8,0.01", {{"PLATENODES", 1, 0.5 * closed - plate_at}});
    move_tools(deck, "0.0005,1.,1.e-8,0.05", {{"PLATENODES", 1, 0.5 * closed - plate_at + 0.5}});
    return m;
}

}  // namespace

std::string hem_deck(const DeckMesh& mesh) {
    return hem_model(mesh).deck.text();
}

StrokeRun read_hem_deck(const DeckMesh& mesh, const std::vector<PrintedState>& states) {
    const StrokeModel m = hem_model(mesh);
    StrokeRun run;
    for (std::size_t i = 0; i < states.size(); ++i) {
        const PrintedState& state = states[i];
        const bool last_of_step =
            i + 1 == states.size() || std::floor(states[i + 1].time - 1e-9) > std::floor(state.time - 1e-9);
        if (last_of_step && std::abs(state.time - 2.0) < 1e-9) run.first = shape_of(m, state);
        if (last_of_step && std::abs(state.time - 3.0) < 1e-9) run.loaded = shape_of(m, state);
        if (state.time <= 2.0 + 1e-9 || state.time > 3.0 + 1e-9) continue;
        const double face = plate_near + (state.time - 2.0) * (0.5 * closed - plate_near);
        run.curve.push_back({hem_room - 2.0 * face, -state.force.at("PLATENODES").at(0)[0]});
    }
    if (states.empty() || std::abs(states.back().time - 4.0) > 1e-9)
        throw std::runtime_error("the hem was not closed and released");
    run.free = shape_of(m, states.back());
    return run;
}

StrokeRun hem_here() {
    const job::HemBend bend = hem_bend();
    const job::StripStroke first = job::hem_first_stroke(bend);
    const stroke::StrokeResult vee =
        job::press_strip(first, stop_at(stroke::StopKind::travel, first_travel), {}).stroke;
    if (!vee.solved())
        throw std::runtime_error(std::string("hem, first stroke: ") + stroke::outcome_words(vee.outcome));
    StrokeRun run;
    run.first = job::bent_strip(vee.recording, vee.recording.states.back());

    job::StripStroke second = job::hem_second_stroke(bend, vee.free);
    second.scene.friction = flat_friction;
    const tool::RigidTool &punch = second.scene.tools.at(0), &die = second.scene.tools.at(1);
    const double apart = punch.position.y() - die.position.y();  // of the faces at travel 0
    const stroke::StrokeResult r =
        job::press_strip(second, stop_at(stroke::StopKind::travel, apart - closed), {}).stroke;
    if (!r.solved())
        throw std::runtime_error(std::string("hem: ") + stroke::outcome_words(r.outcome) + ": " + r.reason);
    for (const stroke::CurvePoint& p : r.curve) {
        const double nearer = hem_room - (apart - p.travel);
        if (!run.curve.empty() && nearer < run.curve.back().travel) break;
        run.curve.push_back({nearer, p.force});
    }
    run.loaded = job::bent_strip(r.recording, r.recording.states.at(stroke::loaded_state(r.recording)));
    run.free = job::bent_strip(r.recording, r.recording.states.back());
    return run;
}

}  // namespace overbend::tests
