#include "tests/outside/stroke_decks.h"

#include <cmath>
#include <cstdio>
#include <stdexcept>

#include "scenes/job/run/strip_bends.h"
#include "sim/units.h"
#include "tests/outside/finite_element_cards.h"
#include "tests/outside/hem_deck.h"
#include "tests/outside/stroke_model.h"
#include "tests/stop_at.h"

namespace overbend::tests {

namespace {

constexpr const char* card = "A1";

job::OffsetBend offset_bend() {
    job::OffsetBend bend;
    bend.material = finite_element_card(card);
    bend.flange = 9.0;
    return bend;
}

Subject offset_subject() {
    const job::OffsetBend bend = offset_bend();
    Subject s{job::offset_stroke(bend), card, 4.95};
    // To where strip and tools are point-symmetric: anywhere else the strip slides to and fro along itself
    // before its ends come against the lands, and what comes of it depends on little.
    const double clearance = 1.05 * bend.thickness;
    for (double& x : s.stroke.scene.strip.x) x -= 0.5 * clearance * std::tan(0.5 * bend.angle);
    s.fine = {0.5 * bend.offset / std::sin(bend.angle)};
    // The strip lies on the die's land, is turned by the corners of both tools, and bent once its ends have
    // come against the lands: there the deck begins, with a thousandth of a millimetre too little room, since
    // the solver does not find a strip that two corners turn round.
    s.begin = 2.5805;
    s.begin_turn = 24.677 * degree;
    s.begin_middle = {-0.2175, -0.78925};
    s.punch = {{-11.0, -s.begin}, {11.0, bend.offset + 1.5 + bend.thickness - s.begin}};
    s.die = {{-11.0, -bend.offset - 0.5}, {11.0, 1.0}};
    return s;
}

job::VeeBend bottomed_bend() {
    job::VeeBend bend;
    bend.material = finite_element_card(card);
    bend.die_angle = bend.punch_angle = 0.5 * pi;
    bend.flange = 0.8 * bend.die_opening + 0.5 * bend.thickness;
    return bend;
}

Subject bottomed_subject() {
    const job::VeeBend bend = bottomed_bend();
    Subject s{job::vee_stroke(bend), card, 2.76};
    s.force = 425.3;  // as the finite elements have at that travel, seven times the air bend's
    s.half = true;
    s.fine = {0.0};
    s.punch = {{-0.3, 0.0}, {5.0, 5.5}};
    s.die = {{-0.3, -6.0}, {6.5, 1.0}};
    return s;
}

Subject subject(const std::string& name) {
    if (name == "offset") return offset_subject();
    if (name == "bottomed V") return bottomed_subject();
    throw std::invalid_argument("no stroke " + name);
}

StrokeModel whole_deck(const Subject& s, const DeckMesh& mesh) {
    StrokeModel m = build_deck(s, mesh);
    press(m, s.travel - s.begin);
    if (s.half)
        take_away(m, {{"UPPER", "PUNCH"}, {"LOWER", "DIE"}});
    else
        draw_apart(m, s.travel - s.begin, 0.6);
    return m;
}

// ---- what is compared

double force_at(const StrokeRun& run, double travel) {
    for (std::size_t i = 1; i < run.curve.size(); ++i) {
        const stroke::CurvePoint &a = run.curve[i - 1], &b = run.curve[i];
        if (b.travel >= travel && b.travel > a.travel)
            return a.force + (b.force - a.force) * (travel - a.travel) / (b.travel - a.travel);
    }
    throw std::runtime_error("the stroke is shorter than a travel at which its force is asked for");
}

std::map<std::string, double> common_figures(const StrokeRun& run, const std::vector<double>& travels) {
    std::map<std::string, double> f;
    for (const double travel : travels) {
        char words[40];
        std::snprintf(words, sizeof words, "force at %.4g mm", travel);
        f[words] = force_at(run, travel);
    }
    return f;
}

void bend_figures_into(std::map<std::string, double>& f, const StrokeRun& run, double from, double to) {
    for (const auto& [state, shape] : {std::pair{" loaded", &run.loaded}, std::pair{" free", &run.free}}) {
        const BendFigures b = bend_figures(*shape, from, to, 1.0);
        f[std::string("turn") + state] = b.turn;
        f[std::string("curvature") + state] = b.curvature;
        f[std::string("radius over 0.5 t") + state] = b.inside_radius;
        f[std::string("thickness") + state] = b.thickness;
        f[std::string("outer strain") + state] = b.outer_strain;
    }
    f["springback"] = f.at("turn loaded") - f.at("turn free");
}

// Of the right flange's end over the left one's, across the mean of both.
double offset_height(const BentShape& s) {
    const double turn = 0.5 * (s.turn.front() + s.turn.back());
    const Place between = s.middle(s.length()) - s.middle(0.0);
    return std::cos(turn) * between.y() - std::sin(turn) * between.x();
}

std::map<std::string, double> offset_figures(const StrokeRun& run) {
    std::map<std::string, double> f = common_figures(run, {2.8, 3.2, 3.6, 4.0, 4.4, 4.6, 4.8});
    bend_figures_into(f, run, 0.0, 0.5 * run.loaded.length());
    f["offset height loaded"] = offset_height(run.loaded);
    f["offset height free"] = offset_height(run.free);
    f["end force"] = run.curve.back().force;
    return f;
}

std::map<std::string, double> bottomed_figures(const StrokeRun& run) {
    std::map<std::string, double> f = common_figures(run, {1.0, 2.0, 2.5});
    bend_figures_into(f, run, 0.0, run.loaded.length());
    f["travel at the stop"] = run.curve.back().travel;
    return f;
}

std::map<std::string, double> hem_figures(const StrokeRun& run) {
    std::map<std::string, double> f;
    for (const double apart : {5.0, 4.0, 3.0, 2.5, 2.2}) {
        char words[40];
        std::snprintf(words, sizeof words, "force at %.4g mm apart", apart);
        f[words] = force_at(run, hem_room - apart);
    }
    bend_figures_into(f, run, 0.0, run.loaded.length());
    f["turn before closing"] = (run.first.turn.back() - run.first.turn.front()) / degree;
    for (const auto& [state, shape] : {std::pair{" loaded", &run.loaded}, std::pair{" free", &run.free}}) {
        const double end = shape->length();
        f[std::string("gap at the ends") + state] =
            (shape->surface(0.0, 1.0) - shape->surface(end, 1.0)).norm();
        f[std::string("gap between ends and fold") + state] =
            (shape->surface(0.25 * end, 1.0) - shape->surface(0.75 * end, 1.0)).norm();
    }
    return f;
}

}  // namespace

const std::vector<std::string>& stroke_decks() {
    static const std::vector<std::string> names = {"offset", "bottomed V", "hem"};
    return names;
}

std::string stroke_deck(const std::string& name, const DeckMesh& mesh) {
    if (name == "hem") return hem_deck(mesh);
    return whole_deck(subject(name), mesh).deck.text();
}

StrokeRun read_stroke_deck(const std::string& name, const DeckMesh& mesh, const std::string& table) {
    const std::vector<PrintedState> states = read_printed(table);
    if (name == "hem") return read_hem_deck(mesh, states);
    const Subject s = subject(name);
    const StrokeModel m = whole_deck(s, mesh);
    StrokeRun run;
    run.curve.push_back({s.begin, 0.0});
    for (std::size_t i = 0; i < states.size(); ++i) {
        const PrintedState& state = states[i];
        if (state.time > 1.0 + 1e-9) break;
        const double force = -state.force.at("PUNCHNODES").at(0)[1];
        run.curve.push_back({s.begin + state.time * (s.travel - s.begin), s.half ? 2.0 * force : force});
        if (i + 1 == states.size() || states[i + 1].time > 1.0 + 1e-9) run.loaded = shape_of(m, state);
    }
    if (states.empty() || std::abs(states.back().force.at("PUNCHNODES").at(0)[1]) > 1e-6)
        throw std::runtime_error("the tools are not off");
    run.free = shape_of(m, states.back());
    return run;
}

StrokeRun run_stroke_deck(const std::string& name, const DeckMesh& mesh) {
    return read_stroke_deck(name, mesh, table_of_deck(stroke_deck(name, mesh)));
}

StrokeRun stroke_here(const std::string& name) {
    if (name == "hem") return hem_here();
    const Subject s = subject(name);
    const stroke::Stop stop =
        s.force ? stop_at(stroke::StopKind::force, *s.force) : stop_at(stroke::StopKind::travel, s.travel);
    const stroke::StrokeResult r = job::press_strip(s.stroke, stop, {}).stroke;
    if (!r.solved())
        throw std::runtime_error(name + ": " + stroke::outcome_words(r.outcome) + ": " + r.reason);
    StrokeRun run;
    for (const stroke::CurvePoint& p : r.curve) {
        if (!run.curve.empty() && p.travel < run.curve.back().travel) break;
        run.curve.push_back(p);
    }
    run.loaded = job::bent_strip(r.recording, r.recording.states.at(stroke::loaded_state(r.recording)));
    run.free = job::bent_strip(r.recording, r.recording.states.back());
    return run;
}

std::map<std::string, double> stroke_figures(const std::string& name, const StrokeRun& run) {
    if (name == "offset") return offset_figures(run);
    return name == "hem" ? hem_figures(run) : bottomed_figures(run);
}

}  // namespace overbend::tests
