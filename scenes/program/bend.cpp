// overbend bend: one bend of one strip between a punch and a V die, from options.

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <iostream>
#include <optional>

#include "scenes/case/read_card.h"
#include "scenes/process/vee_bend.h"
#include "scenes/program/commands.h"
#include "scenes/program/exit_status.h"
#include "scenes/program/options.h"
#include "sim/errors.h"

namespace overbend::program {

namespace {

constexpr double degree = 3.14159265358979323846 / 180.0;  // rad

// Below an open die's shoulders there is room for so many die openings of travel; long before, a strip of
// ordinary length has slipped through.
constexpr double open_die_travel = 2.5;

struct BendOptions {
    std::string material;
    scenes::VeeBend bend;             // lengths in mm
    std::optional<double> die_angle;  // deg
    double punch_angle = 30.0;        // deg
    std::optional<double> flange;     // mm
    std::optional<double> travel;     // mm
    std::optional<double> free;       // deg, bend angle
    std::optional<double> force;      // N per mm
    bool curve = false;
    Output output;
};

std::string millimetres(double length) {
    char text[32];
    std::snprintf(text, sizeof text, "%.6g mm", length);
    return text;
}

// What single options cannot know of one another.
void check_together(const BendOptions& given) {
    const int stops =
        int(given.travel.has_value()) + int(given.free.has_value()) + int(given.force.has_value());
    if (stops != 1)
        complain("--travel, --free, --force-per-mm",
                 std::to_string(stops) + " stops are given; give exactly one");
    const scenes::VeeBend& b = given.bend;
    if (b.die_opening < 2.0 * b.thickness || b.die_opening > 300.0 * b.thickness)
        complain("--die-opening", millimetres(b.die_opening) + " does not suit the thickness; give from " +
                                      millimetres(2.0 * b.thickness) + " to " +
                                      millimetres(300.0 * b.thickness));
    const double least = 0.5 * b.die_opening + b.thickness;
    if (given.flange && *given.flange < least)
        complain("--flange", millimetres(*given.flange) +
                                 " does not reach over the shoulder; give at least " + millimetres(least));
    const double most = open_die_travel * b.die_opening;
    if (given.travel && !given.die_angle && *given.travel > most)
        complain("--travel", millimetres(*given.travel) +
                                 " is more than an open die has room for; give at most " + millimetres(most));
}

stroke::Stop stop_of(const BendOptions& given) {
    stroke::Stop stop;
    if (given.travel) stop.kind = stroke::StopKind::travel, stop.value = *given.travel;
    if (given.force) stop.kind = stroke::StopKind::force, stop.value = *given.force;
    if (given.free) stop.kind = stroke::StopKind::free_angle, stop.value = *given.free * degree;
    if (!given.die_angle) stop.travel_limit = open_die_travel * given.bend.die_opening;
    return stop;
}

// A stroke that was not solved is no result.
void require_solved(const stroke::StrokeResult& stroke) {
    if (!stroke.solved())
        throw NotSolved(std::string("the stroke was not solved (") + stroke::outcome_words(stroke.outcome) +
                        "): " + stroke.reason);
}

// A radius of 0 stands for a flat strip, which has none.
nlohmann::ordered_json radius_or_null(double radius) {
    return radius > 0.0 ? nlohmann::ordered_json(radius) : nlohmann::ordered_json(nullptr);
}

void print_as_json(const scenes::VeeResult& r, const BendOptions& given) {
    nlohmann::ordered_json object = {{"outcome", stroke::outcome_words(r.stroke.outcome)},
                                     {"loaded_deg", r.loaded / degree},
                                     {"free_deg", r.free / degree},
                                     {"springback_deg", (r.loaded - r.free) / degree},
                                     {"travel_mm", r.stroke.stop_travel},
                                     {"peak_force_N_per_mm", r.stroke.peak_force},
                                     {"inside_radius_loaded_mm", radius_or_null(r.inside_radius_loaded)},
                                     {"inside_radius_free_mm", radius_or_null(r.inside_radius_free)},
                                     {"audit_residue_percent", r.stroke.audit.residue_percent()},
                                     {"increments", r.stroke.increments},
                                     {"iterations", r.stroke.iterations}};
    if (!r.stroke.reason.empty()) object["reason"] = r.stroke.reason;
    if (given.curve) {
        nlohmann::ordered_json curve = nlohmann::ordered_json::array();
        for (const stroke::CurvePoint& p : r.stroke.curve)
            curve.push_back({{"travel_mm", p.travel}, {"force_N_per_mm", p.force}});
        object["curve"] = curve;
    }
    print_json(object);
}

Row radius_row(const std::string& name, double radius) {
    if (radius <= 0.0) return {name, "flat", ""};
    return {name, fixed(radius, 3), "mm"};
}

void print_as_table(const scenes::VeeResult& r, const BendOptions& given) {
    // Every figure is made before the first is printed, so that an error leaves nothing half said.
    const std::vector<Row> rows = {
        {"bend angle under load", fixed(r.loaded / degree, 3), "deg"},
        {"bend angle free", fixed(r.free / degree, 3), "deg"},
        {"springback", fixed((r.loaded - r.free) / degree, 3), "deg"},
        {"travel", fixed(r.stroke.stop_travel, 3), "mm"},
        {"peak force", fixed(r.stroke.peak_force, 1), "N/mm"},
        radius_row("inside radius under load", r.inside_radius_loaded),
        radius_row("inside radius free", r.inside_radius_free),
        {"outcome", stroke::outcome_words(r.stroke.outcome), ""},
        {"energy not accounted for", fixed(r.stroke.audit.residue_percent(), 3), "%"},
        {"increments", std::to_string(r.stroke.increments), ""},
        {"iterations", std::to_string(r.stroke.iterations), ""}};
    std::vector<Row> curve;
    if (given.curve)
        for (const stroke::CurvePoint& p : r.stroke.curve)
            curve.push_back({fixed(p.travel, 4) + " mm", fixed(p.force, 2), "N/mm"});
    print_rows(rows);
    if (curve.empty()) return;
    std::cout << "\nforce over travel, down and back\n";
    print_rows(curve);
}

// Returns whether the stop was reached.
bool run(const BendOptions& given) {
    check_together(given);
    scenes::VeeBend bend = given.bend;
    bend.material = scenes::read_card(given.material, std::filesystem::path());
    if (given.die_angle) bend.die_angle = *given.die_angle * degree;
    bend.punch_angle = given.punch_angle * degree;
    bend.flange = given.flange;

    stroke::StrokeOptions options;
    options.record = false;
    const bool watched = shows_progress(given.output);
    if (watched) {
        options.progress = [](double travel, double force) {
            std::fprintf(stderr, "\rtravel %7.3f mm, force %8.1f N/mm ", travel, force);
            return true;
        };
    }
    const scenes::VeeResult result = scenes::bend_vee(bend, stop_of(given), options);
    if (watched) std::fprintf(stderr, "\r%48s\r", "");
    require_solved(result.stroke);
    const bool reached = result.stroke.outcome == stroke::Outcome::reached;
    if (!reached && !given.output.quiet)
        std::fprintf(stderr, "overbend: the stop is not reached: %s\n", result.stroke.reason.c_str());
    given.output.json ? print_as_json(result, given) : print_as_table(result, given);
    return reached;
}

void add_strip_and_tools(CLI::App& command, BendOptions& given) {
    scenes::VeeBend& b = given.bend;
    command.add_option("--material", given.material, "material card: a name such as dc01, or a file")
        ->required();
    command.add_option("--thickness", b.thickness, "of the strip, mm")
        ->required()
        ->check(from_to(0.05, 20.0, "mm"));
    command.add_option("--die-opening", b.die_opening, "between the shoulder arcs' centres, mm")
        ->required()
        ->check(from_to(0.2, 1000.0, "mm"));
    command.add_option("--shoulder", b.shoulder_radius, "shoulder radius of the die, mm")
        ->required()
        ->check(from_to(0.01, 200.0, "mm"));
    command.add_option("--nose", b.nose_radius, "nose radius of the punch, mm")
        ->required()
        ->check(from_to(0.01, 200.0, "mm"));
    command
        .add_option("--die-angle", given.die_angle,
                    "included angle of the die's groove, deg, such as 85; without it the die is open below "
                    "the shoulders")
        ->check(between(0.0, 180.0, "deg"));
    command.add_option("--punch-angle", given.punch_angle, "included angle of the punch, deg")
        ->capture_default_str()
        ->check(between(0.0, 180.0, "deg"));
    command.add_option("--friction", b.friction, "coefficient between strip and tools")
        ->capture_default_str()
        ->check(from_to(0.0, 0.3, ""));
    command
        .add_option("--flange", given.flange,
                    "length of each half of the strip, mm; two die openings without it")
        ->check(from_to(0.1, 5000.0, "mm"));
    add_width(command, b.width);
    command.add_option("--layers", b.layers, "through the thickness")
        ->capture_default_str()
        ->check(whole_from_to(5, 41));
}

}  // namespace

void add_bend(CLI::App& app, int& status) {
    static BendOptions given;
    CLI::App* command =
        app.add_subcommand("bend", "bend one strip between a punch and a V die, from options alone");
    add_strip_and_tools(*command, given);
    command->add_option("--travel", given.travel, "stop: travel of the punch from first touch, mm")
        ->check(between(0.0, 2500.0, "mm"));
    command
        ->add_option("--free", given.free, "stop: where the bend angle is this once the strip is let go, deg")
        ->check(between(0.0, 180.0, "deg"));
    command->add_option("--force-per-mm", given.force, "stop: force per mm of strip width, N/mm")
        ->check(between(0.0, 1e6, "N/mm"));
    command->add_flag("--curve", given.curve, "print the force over the travel too");
    add_output(*command, given.output);
    command->footer(
        "Give exactly one stop: --travel, --free or --force-per-mm. Bend angles are turned through: 0 is "
        "flat.\n"
        "Example: overbend bend --material dc01 --thickness 1 --die-opening 8 --shoulder 1 --nose 1 --free "
        "90");
    command->callback([&status] { status = static_cast<int>(run(given) ? Exit::done : Exit::verdict_no); });
}

}  // namespace overbend::program
