#include "scenes/commands/bend_print.h"

#include <iostream>
#include <nlohmann/json.hpp>

#include "sim/units.h"

namespace overbend::commands {

namespace {

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

Row radius_row(const std::string& name, double radius) {
    if (radius <= 0.0) return {name, "flat", ""};
    return {name, fixed(radius, 3), "mm"};
}

void add_rows(const job::StripResult& r, const BendOptions& given, std::vector<Row>& rows) {
    const std::vector<Row> force = {{"travel", fixed(r.stroke.stop_travel, 3), "mm"},
                                    {"peak force", fixed(r.stroke.peak_force, 1), "N/mm"}};
    const bool vee = given.kind == BendKind::vee;
    for (const job::BendReading& b : r.bends) {
        const std::string name = vee ? "" : b.name + ": ";
        rows.push_back({name + "bend angle under load", fixed(b.loaded / degree, 3), "deg"});
        rows.push_back({name + "bend angle free", fixed(b.free / degree, 3), "deg"});
        rows.push_back({name + "springback", fixed(b.springback() / degree, 3), "deg"});
        if (vee) rows.insert(rows.end(), force.begin(), force.end());
        rows.push_back(radius_row(name + "inside radius under load", b.inside_radius_loaded));
        rows.push_back(radius_row(name + "inside radius free", b.inside_radius_free));
    }
    for (const job::Measure& m : r.measures) rows.push_back({m.words, fixed(m.value, 5), m.unit});
    if (!vee) rows.insert(rows.end(), force.begin(), force.end());
}

void print_as_table(const job::StripResult& r, const BendOptions& given) {
    // Every figure is made before the first is printed, so that an error leaves nothing half said.
    std::vector<Row> rows;
    add_rows(r, given, rows);
    rows.push_back({"outcome", stroke::outcome_words(r.stroke.outcome), ""});
    rows.push_back({"energy balance error", fixed(r.stroke.audit.residue_percent(), 3), "%"});
    rows.push_back({"increments", std::to_string(r.stroke.increments), ""});
    rows.push_back({"iterations", std::to_string(r.stroke.iterations), ""});
    std::vector<Row> curve;
    if (given.curve)
        for (const stroke::CurvePoint& p : r.stroke.curve)
            curve.push_back({fixed(p.travel, 4) + " mm", fixed(p.force, 2), "N/mm"});
    print_rows(rows);
    if (curve.empty()) return;
    std::cout << "\nforce over travel, down and back\n";
    print_rows(curve);
}

}  // namespace

void print_bend(const job::StripResult& result, const BendOptions& given) {
    given.output.json ? print_as_json(result, given) : print_as_table(result, given);
}

}  // namespace overbend::commands
