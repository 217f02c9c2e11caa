#include "tests/outside/shape_rows.h"

#include <algorithm>
#include <sstream>
#include <stdexcept>

#include "scenes/job/run/strip_bends.h"
#include "sim/units.h"
#include "tests/files/own_folder.h"
#include "tests/outside/finite_element_cards.h"
#include "tests/outside/shape_figures.h"
#include "tests/stop_at.h"

namespace overbend::tests {

namespace {

// The metals as the finite elements had them: not read from the program's cards, which may get better
// figures.
material::Card frozen_card(const char* name, double youngs_modulus, const material::Hardening& hardening) {
    material::Card card;
    card.name = name;
    card.youngs_modulus = youngs_modulus;
    card.poisson = 0.3;
    card.hardening = hardening;
    return card;
}

material::Card s235_then() {
    return frozen_card("S235", 210e3, material::Hollomon{671.0, 0.1488});
}

struct ShapeVee {
    const char* name;
    material::Card card;
    double die_opening, nose_radius, travel;
};

std::vector<ShapeVee> shape_vees() {
    return {{"V1", s235_then(), 8.0, 1.0, 2.72},
            {"V2", frozen_card("DC04", 208e3, material::Swift{505.8, 0.000798, 0.18}), 8.0, 2.0, 2.336},
            {"V3", finite_element_card("A2"), 8.0, 0.5, 2.7},
            {"V4", frozen_card("C75S", 208e3, material::Voce{1380.0, 277.9, 54.06}), 10.0, 2.0, 3.27},
            {"V5", frozen_card("1.4310", 180e3, material::Voce{1040.0, 560.2, 25.64}), 10.0, 1.5, 3.91}};
}

// The last state under the punch, and the strip after release.
struct LoadedAndFree {
    BentShape loaded, free;
};
LoadedAndFree shapes_of(const stroke::Recording& r) {
    return {job::bent_strip(r, r.states.at(stroke::loaded_state(r))), job::bent_strip(r, r.states.back())};
}

void add_bend_figures(std::map<std::string, double>& to, const std::string& state, const BendFigures& f) {
    to["turn " + state] = f.turn;
    to["curvature " + state] = f.curvature;
    to["radius over 0.5 t " + state] = f.inside_radius;
    to["radius over 30 deg " + state] = f.radius_30;
    to["radius over 60 deg " + state] = f.radius_60;
    to["thickness " + state] = f.thickness;
    to["outer strain " + state] = f.outer_strain;
}

ShapeHere figures_of_stroke(const stroke::StrokeResult& r) {
    ShapeHere here;
    if (r.outcome != stroke::Outcome::reached) {
        here.failed = std::string(stroke::outcome_words(r.outcome)) + ": " + r.reason;
        return here;
    }
    here.audit_percent = r.audit.residue_percent();
    here.figures["peak force"] = r.peak_force;
    here.figures["end force"] = r.stop_force;
    return here;
}

ShapeHere vee_here(const ShapeVee& v) {
    job::VeeBend vee;
    vee.material = v.card;
    vee.die_opening = v.die_opening;
    vee.nose_radius = v.nose_radius;
    vee.flange = 0.8 * v.die_opening + 0.5 * vee.thickness;
    const job::VeeResult r = job::bend_vee(vee, stop_at(stroke::StopKind::travel, v.travel), {});
    ShapeHere here = figures_of_stroke(r.stroke);
    if (!here.failed.empty()) return here;
    const LoadedAndFree strip = shapes_of(r.stroke.recording);
    for (const auto& [state, bent] : {std::pair{"loaded", &strip.loaded}, std::pair{"free", &strip.free}}) {
        add_bend_figures(here.figures, state, bend_figures(*bent, 0.0, bent->length(), vee.thickness));
        here.figures[std::string("thickness ") + state] = bent->thickness(0.5 * bent->length());
    }
    here.figures["springback"] = here.figures.at("turn loaded") - here.figures.at("turn free");
    return here;
}

ShapeHere wiping_here() {
    job::WipingBend wiping;
    wiping.material = s235_then();
    wiping.flange = 12.0;
    wiping.hold = 6.0;
    const job::StripStroke set_up = job::wiping_stroke(wiping);
    const stroke::StrokeResult r =
        job::press_strip(set_up, stop_at(stroke::StopKind::travel, 6.5), {}).stroke;
    ShapeHere here = figures_of_stroke(r);
    if (!here.failed.empty()) return here;
    const LoadedAndFree strip = shapes_of(r.recording);
    const double end = strip.loaded.length();
    add_bend_figures(here.figures, "loaded", bend_figures(strip.loaded, 0.0, end, wiping.thickness));
    add_bend_figures(here.figures, "free", bend_figures(strip.free, 0.0, end, wiping.thickness));
    here.figures["springback"] = here.figures.at("turn loaded") - here.figures.at("turn free");
    here.figures["slip of the held end loaded"] =
        strip.loaded.middle(0.0).x() - r.recording.states.front().x.front();
    for (const tool::RigidTool& t : r.recording.tools)
        if (t.role == tool::Role::die)
            here.figures["lift-off from the edge loaded"] =
                lift_off(strip.loaded, -1.0, t.outline, t.position, *wiping.hold - wiping.thickness, end);
    return here;
}

// Of a section on the way down, between the two states about a travel.
double tension_at(const stroke::Recording& r, double travel, double position) {
    const auto after = std::find_if(r.states.begin(), r.states.end(),
                                    [&](const stroke::State& s) { return s.travel >= travel; });
    if (after == r.states.begin() || after == r.states.end()) throw std::runtime_error("no such travel");
    const auto before = after - 1;
    const double share = (travel - before->travel) / (after->travel - before->travel);
    return (1.0 - share) * tension(r, *before, position) + share * tension(r, *after, position);
}

// The right half: its wall against the foot's middle.
ShapeHere channel_here() {
    job::ChannelBend channel;
    channel.material = s235_then();
    channel.flange = 8.0;
    const stroke::StrokeResult r =
        job::press_strip(job::channel_stroke(channel), stop_at(stroke::StopKind::travel, 8.5), {}).stroke;
    ShapeHere here = figures_of_stroke(r);
    if (!here.failed.empty()) return here;
    const LoadedAndFree strip = shapes_of(r.recording);
    const double middle = 0.5 * strip.loaded.length(), wall = middle + 15.0, at = middle + 6.0;
    for (const auto& [state, bent] : {std::pair{"loaded", &strip.loaded}, std::pair{"free", &strip.free}}) {
        add_bend_figures(here.figures, state, bend_figures(*bent, middle, wall, channel.thickness));
        here.figures[std::string("slope of the foot ") + state] =
            (bent->turn_at(at) - bent->turn_at(middle)) / degree;
        here.figures[std::string("bulge of the foot ") + state] =
            bent->middle(at).y() - bent->middle(middle).y();
    }
    here.figures["springback"] = here.figures.at("turn loaded") - here.figures.at("turn free");
    here.figures["tension of the foot at 5 mm"] = tension_at(r.recording, 5.0, middle);
    return here;
}

}  // namespace

std::vector<ShapeRow> read_shape_rows(const std::string& path) {
    std::vector<ShapeRow> all;
    std::istringstream lines(bytes_of(path));
    for (std::string line; std::getline(lines, line);) {
        if (line.empty() || line[0] == '#') continue;
        std::istringstream fields(line);
        ShapeRow row;
        std::getline(fields, row.name, ',');
        std::getline(fields, row.quantity, ',');
        std::getline(fields, row.unit, ',');
        if (!(fields >> row.reference)) throw std::runtime_error(path + ": not four fields: " + line);
        char comma = ' ';
        if (double coarse = 0.0; fields >> comma >> coarse && comma == ',') row.coarse = coarse;
        all.push_back(row);
    }
    return all;
}

const std::vector<ShapeRow>& shape_rows() {
    static const std::vector<ShapeRow> rows = read_shape_rows("tests/outside/shape_rows.csv");
    return rows;
}

ShapeHere shape_here(const std::string& name) {
    for (const ShapeVee& v : shape_vees())
        if (name == v.name) return vee_here(v);
    if (name == "W2") return wiping_here();
    if (name == "C1") return channel_here();
    throw std::invalid_argument("no case " + name + " of the shape of a bend");
}

}  // namespace overbend::tests
