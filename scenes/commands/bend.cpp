// overbend bend: one strip bent between two tools, from options.

#include <cstdio>
#include <filesystem>
#include <iostream>
#include <nlohmann/json.hpp>

#include "scenes/commands/bend_options.h"
#include "scenes/commands/commands.h"
#include "scenes/documents/tables/table.h"
#include "scenes/files/case/read_card.h"
#include "sim/errors.h"
#include "sim/units.h"

namespace overbend::commands {

namespace {

// ---- from the options to the stroke of their kind

stroke::Stop stop_of(const BendOptions& given) {
    stroke::Stop stop;
    if (const auto travel = given.number("--travel"))
        stop.kind = stroke::StopKind::travel, stop.value = *travel;
    if (const auto force = given.number("--force-per-mm"))
        stop.kind = stroke::StopKind::force, stop.value = *force;
    if (const auto free = given.number("--free"))
        stop.kind = stroke::StopKind::free_angle, stop.value = *free * degree;
    return stop;
}

void check_vee(const BendOptions& given, const job::VeeBend& b) {
    const double least = 0.5 * b.die_opening + b.thickness, most = job::open_die_travel * b.die_opening;
    if (b.flange && *b.flange < least)
        complain("--flange", millimetres(*b.flange) + " does not reach over the shoulder; give at least " +
                                 millimetres(least));
    const double travel = given.number_or("--travel", 0.0);
    if (!b.die_angle && travel > most)
        complain("--travel",
                 millimetres(travel) + " is too large for an open die; give at most " + millimetres(most));
    if (given.number("--bottom") && !b.die_angle)
        complain("--bottom", "an open die has no bottom; give --die-angle, or remove it");
}

job::StripResult bend(const BendOptions& given, job::VeeBend& b, const stroke::StrokeOptions& options) {
    check_vee(given, b);
    return job::press_strip(job::vee_stroke(b), stop_of(given), options);
}
job::StripResult bend(const BendOptions& given, job::OffsetBend& b, const stroke::StrokeOptions& options) {
    return job::press_strip(job::offset_stroke(b), stop_of(given), options);
}
job::StripResult bend(const BendOptions& given, job::ChannelBend& b, const stroke::StrokeOptions& options) {
    b.pad = spring_of(given, "pad");
    return job::press_strip(job::channel_stroke(b), stop_of(given), options);
}
job::StripResult bend(const BendOptions& given, job::WipingBend& b, const stroke::StrokeOptions& options) {
    b.clamp = spring_of(given, "clamp");
    b.clamp_on = given.clamp_on.value_or(b.clamp_on);
    return job::press_strip(job::wiping_stroke(b), stop_of(given), options);
}
job::StripResult bend(const BendOptions& given, job::HemBend& b, const stroke::StrokeOptions& options) {
    return job::bend_hem(b, {given.number("--gap"), given.number("--force-per-mm")}, options);
}
job::StripResult bend(const BendOptions& given, job::DrawBend& b, const stroke::StrokeOptions& options) {
    b.clamp = *spring_of(given, "clamp");
    b.travel = *given.number("--travel");
    return job::bend_draw(b, options);
}

job::StripResult bend_of_kind(const BendOptions& given, const material::Card& material,
                              const stroke::StrokeOptions& options) {
    AnyBend any = bend_of(given);
    return std::visit(
        [&](auto& b) {
            b.material = material;
            b.thickness = given.thickness;
            b.friction = given.friction;
            b.width = given.width;
            b.weighs = given.weighs;
            b.layers = given.layers;
            return bend(given, b, options);
        },
        any);
}

using Json = nlohmann::ordered_json;

// A radius of 0 stands for a flat strip, which has none.
Json radius_or_null(double radius) {
    return radius > 0.0 ? Json(radius) : Json(nullptr);
}

void add_angles(const job::BendReading& b, Json& object) {
    object["loaded_deg"] = b.loaded / degree;
    object["free_deg"] = b.free / degree;
    object["springback_deg"] = b.springback() / degree;
}

void add_radii(const job::BendReading& b, Json& object) {
    object["inside_radius_loaded_mm"] = radius_or_null(b.inside_radius_loaded);
    object["inside_radius_free_mm"] = radius_or_null(b.inside_radius_free);
}

void add_force(const stroke::StrokeResult& s, Json& object) {
    object["travel_mm"] = s.stop_travel;
    object["peak_force_N_per_mm"] = s.peak_force;
}

void add_bends(const job::StripResult& r, const BendOptions& given, Json& object) {
    object["kind"] = kind_word(given.kind);
    object["outcome"] = stroke::outcome_words(r.stroke.outcome);
    object["bends"] = Json::array();
    for (const job::BendReading& b : r.bends) {
        Json bend = {{"name", b.name}};
        add_angles(b, bend);
        add_radii(b, bend);
        object["bends"].push_back(bend);
    }
    for (const job::Measure& m : r.measures) object[m.key] = m.value;
    add_force(r.stroke, object);
}

void print_as_json(const job::StripResult& r, const BendOptions& given) {
    Json object;
    if (given.kind == BendKind::vee) {
        object["outcome"] = stroke::outcome_words(r.stroke.outcome);
        add_angles(r.bends.front(), object);
        add_force(r.stroke, object);
        add_radii(r.bends.front(), object);
    } else {
        add_bends(r, given, object);
    }
    object["audit_residue_percent"] = r.stroke.audit.residue_percent();
    object["increments"] = r.stroke.increments;
    object["iterations"] = r.stroke.iterations;
    if (!r.stroke.reason.empty()) object["reason"] = r.stroke.reason;
    if (given.curve) {
        Json curve = Json::array();
        for (const stroke::CurvePoint& p : r.stroke.curve)
            curve.push_back({{"travel_mm", p.travel}, {"force_N_per_mm", p.force}});
        object["curve"] = curve;
    }
    print_json(object);
}

// Name, value and unit, without heads.
documents::Table unheaded() {
    return {"", {{""}, {"", "", 0}, {""}}, {}};
}

void add_bend_rows(const job::BendReading& b, const std::string& name, documents::Table& table) {
    const auto angle = [&](const char* words, double value) {
        table.rows.push_back({name + words, fixed(value / degree, 3), "deg"});
    };
    const auto radius = [&](const char* words, double value) {
        const bool flat = value <= 0.0;
        table.rows.push_back({name + words, flat ? "flat" : fixed(value, 3), flat ? "" : "mm"});
    };
    angle("bend angle under load", b.loaded);
    angle("bend angle free", b.free);
    angle("springback", b.springback());
    radius("inside radius under load", b.inside_radius_loaded);
    radius("inside radius free", b.inside_radius_free);
}

documents::Table figures_table(const job::StripResult& r, BendKind kind) {
    documents::Table table = unheaded();
    for (const job::BendReading& b : r.bends)
        add_bend_rows(b, kind == BendKind::vee ? "" : b.name + ": ", table);
    for (const job::Measure& m : r.measures) table.rows.push_back({m.words, fixed(m.value, 5), m.unit});
    const stroke::StrokeResult& s = r.stroke;
    table.rows.insert(table.rows.end(), {{"travel", fixed(s.stop_travel, 3), "mm"},
                                         {"peak force", fixed(s.peak_force, 1), "N/mm"},
                                         {"outcome", stroke::outcome_words(s.outcome), ""},
                                         {"energy balance error", fixed(s.audit.residue_percent(), 3), "%"},
                                         {"increments", std::to_string(s.increments), ""},
                                         {"iterations", std::to_string(s.iterations), ""}});
    return table;
}

documents::Table curve_table(const stroke::StrokeResult& s) {
    documents::Table table{
        "Force over travel, down and back", {{"Travel", "mm", 4}, {"Force", "N/mm", 2}}, {}};
    for (const stroke::CurvePoint& p : s.curve) table.rows.push_back({p.travel, p.force});
    return table;
}

void print_bend(const job::StripResult& result, const BendOptions& given) {
    if (given.output.json) return print_as_json(result, given);
    std::cout << documents::table_text(figures_table(result, given.kind));
    if (given.curve) std::cout << "\n" << documents::table_text(curve_table(result.stroke));
}

// ---- the command

// A stroke that was not solved is no result.
void require_result(const stroke::StrokeResult& stroke) {
    if (!stroke.solved())
        throw NotSolved(std::string("the stroke was not solved (") + stroke::outcome_words(stroke.outcome) +
                        "): " + stroke.reason);
}

Exit run(const BendOptions& given) {
    check_together(given);
    const material::Card material = files::read_card(given.material, std::filesystem::path());
    stroke::StrokeOptions options;
    options.record = false;
    const bool watched = shows_progress(given.output);
    if (watched) {
        options.progress = [](double travel, double force) {
            std::fprintf(stderr, "\rtravel %7.3f mm, force %8.1f N/mm ", travel, force);
            return true;
        };
    }
    const job::StripResult result = bend_of_kind(given, material, options);
    if (watched) std::fprintf(stderr, "\r%48s\r", "");
    require_result(result.stroke);
    const bool reached = result.stroke.outcome == stroke::Outcome::reached;
    if (!reached && !given.output.quiet)
        std::fprintf(stderr, "overbend: the stop is not reached: %s\n", result.stroke.reason.c_str());
    print_bend(result, given);
    return reached ? Exit::done : Exit::verdict_no;
}

}  // namespace

void add_bend(Program& app) {
    static BendOptions given;
    Command command = app.command(
        "bend", "Bend one strip between a punch and a die, without a case file; default: a V die");
    add_bend_options(command, given);
    command.footer(
        "In brackets: the unit, and the kinds of bend that use the option. Give exactly one stop: --travel, "
        "--free, "
        "--force-per-mm "
        "or,\n"
        "of a hem, --gap. A bend angle of 0 is flat.\n"
        "Example: overbend bend --material dc01 --thickness 1 --die-opening 8 --shoulder 1 --nose 1 --free "
        "90\n"
        "Example: overbend bend --kind offset --material dc01 --thickness 1 --offset 5 --offset-angle 45 "
        "--nose 1 "
        "--free 42\n"
        "Example: overbend bend --kind channel --material dc01 --thickness 1 --punch-width 20 --corner 2 "
        "--shoulder "
        "2 --depth 12 --pad-preload 20 --pad-rate 1 --travel 11.5\n"
        "Example: overbend bend --kind wiping --material dc01 --thickness 1 --edge 2 --corner 3 --flange 15 "
        "--clamp-force 100 --free 85\n"
        "Example: overbend bend --kind hem --material dc04 --thickness 1 --hem 8 --die-opening 9 --shoulder "
        "1 --nose 1 --force-per-mm 270\n"
        "Example: overbend bend --kind draw --material dc01 --thickness 0.8 --punch-width 50 --corner 5 "
        "--shoulder 5 "
        "--flange 60 --clamp-force 30 --travel 20");
    command.runs([] { return run(given); });
}

}  // namespace overbend::commands
