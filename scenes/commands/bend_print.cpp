#include "scenes/commands/bend_print.h"

#include <iostream>
#include <nlohmann/json.hpp>

#include "scenes/documents/tables/table.h"
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

}  // namespace

void print_bend(const job::StripResult& result, const BendOptions& given) {
    if (given.output.json) return print_as_json(result, given);
    std::cout << documents::table_text(figures_table(result, given.kind));
    if (given.curve) std::cout << "\n" << documents::table_text(curve_table(result.stroke));
}

}  // namespace overbend::commands
