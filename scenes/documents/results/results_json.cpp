#include "scenes/documents/results/results_json.h"

#include <nlohmann/json.hpp>

#include "scenes/documents/results/measures_json.h"
#include "scenes/documents/results/shop_json.h"
#include "scenes/job/run/fitted_blank.h"
#include "scenes/job/run/job_rules.h"
#include "sim/material/layer_law.h"
#include "sim/units.h"

namespace overbend::documents {

namespace {

using Json = nlohmann::ordered_json;

Json bend_json(const files::Case& c, const job::BendResult& b) {
    return {{"name", c.part.bends[b.bend].name},
            {"drawing_deg", b.drawing / degree},
            {"loaded_deg", b.loaded / degree},
            {"free_deg", b.free / degree},
            {"springback_deg", b.springback() / degree},
            {"inside_radius_loaded_mm", b.shape_loaded.inside_radius},
            {"inside_radius_free_mm", b.shape_free.inside_radius},
            {"sharpest_radius_loaded_mm", b.shape_loaded.sharpest_radius},
            {"sharpest_radius_free_mm", b.shape_free.sharpest_radius},
            {"outer_fibre_log_strain", b.shape_loaded.outer_strain},
            {"thickness_mm", b.shape_free.thickness}};
}

Json closest_json(const stroke::Recording& r, const clearance::Closest& c) {
    if (c.tool < 0) return nullptr;
    return {{"distance_mm", c.distance},
            {"blank_position_mm", c.blank_position},
            {"x_mm", c.at.x()},
            {"y_mm", c.at.y()},
            {"x_on_tool_mm", c.on_tool.x()},
            {"y_on_tool_mm", c.on_tool.y()},
            {"tool", r.tools[c.tool].name},
            {"travel_mm", c.travel}};
}

Json step_json(const files::Case& c, const job::JobResult& job, int index) {
    const job::StepResult& step = job.steps[index];
    const job::Findings found = job::of_step(job.findings, index);
    const auto words_of = [&](Severity severity) {
        std::vector<std::string> all;
        for (const Finding& f : job::with(found, severity)) all.push_back(job::finding_words(c, f));
        return all;
    };
    const stroke::StrokeResult& s = step.stroke;
    Json bends = Json::array(), hits = Json::array();
    for (const job::BendResult& b : step.bends) bends.push_back(bend_json(c, b));
    for (const job::Interference& f : step.interferences) {
        Json hit = closest_json(s.recording, f.deepest);
        hit["depth_mm"] = -f.deepest.distance;
        hit["words"] = job::finding_words(c, job::finding_of(step, index, f));
        hits.push_back(hit);
    }
    Json curve = Json::array();
    for (const stroke::CurvePoint& p : s.curve) curve.push_back({p.travel, p.force});
    const stroke::Audit& a = s.audit;
    return {{"name", step.name},
            {"outcome", stroke::outcome_words(s.outcome)},
            {"reason", s.reason},
            {"bends", bends},
            {"stop_travel_mm", s.stop_travel},
            {"peak_force_kN", s.peak_force * c.width / 1000.0},
            {"peak_force_kN_per_m", s.peak_force},
            {"work_J", a.largest * c.width / 1000.0},
            {"least_clearance", closest_json(s.recording, step.least)},
            {"interferences", hits},
            {"warnings", words_of(Severity::caution)},
            {"remarks", words_of(Severity::note)},
            {"gauge_mm", step.gauge},
            {"audit",
             {{"tools_N_mm_per_mm", a.tools},
              {"elastic_N_mm_per_mm", a.elastic},
              {"plastic_N_mm_per_mm", a.plastic},
              {"friction_N_mm_per_mm", a.friction},
              {"contact_N_mm_per_mm", a.contact},
              {"springs_N_mm_per_mm", a.springs},
              {"weight_N_mm_per_mm", a.weight},
              {"regularisation_N_mm_per_mm", a.regularisation},
              {"set_free_N_mm_per_mm", a.set_free},
              {"residue_percent", a.residue_percent()},
              {"force_balance", s.balance_error}}},
            {"increments", s.increments},
            {"iterations", s.iterations},
            {"curve_travel_mm_force_N_per_mm", curve}};
}

// Along the drawing, from its left end.
Json deviations_json(const files::Case& c, const job::JobResult& job) {
    Json list = Json::array();
    for (const job::ProfilePoint& p : job.profile.points) {
        Json point;
        if (p.bend >= 0) point["bend"] = c.part.bends[p.bend].name;
        if (p.flat >= 0) point["flat"] = p.flat + 1;
        point["x_mm"] = p.drawn.x(), point["y_mm"] = p.drawn.y(), point["off_mm"] = p.off;
        list.push_back(point);
    }
    return list;
}

Json lines_json(const files::Case& c, const job::Blank& blank) {
    Json lines = Json::array();
    for (std::size_t b = 0; b < blank.bend_line.size(); ++b)
        lines.push_back({{"name", c.part.bends[b].name}, {"at_mm", blank.bend_line[b]}});
    return lines;
}

Json part_json(const files::Case& c, const job::JobResult& job) {
    Json angles = Json::array(), profile = Json::array();
    for (std::size_t b = 0; b < job.finished_angle.size(); ++b)
        angles.push_back({{"name", c.part.bends[b].name},
                          {"drawing_deg", c.part.bends[b].angle / degree},
                          {"finished_deg", job.finished_angle[b] / degree}});
    Json part = {{"blank_length_mm", job.blank.length},
                 {"developed_din_6935_mm", job::developed_length(c, job::din_allowance)},
                 {"developed_handbook_mm", job::developed_length(c, job::handbook_allowance)},
                 {"bend_lines", lines_json(c, job.blank)},
                 {"mass_g", job.mass_g}};
    if (job.finished_angle.empty()) return part;
    const strip::StripState& s = job.steps.back().stroke.free;
    for (int i = 0; i < s.nodes(); ++i) profile.push_back({s.x[i], s.y[i]});
    part["developed_mechanics_mm"] = job.fitted.length;
    part["fitted_blank"] = {{"length_mm", job.fitted.length}, {"bend_lines", lines_json(c, job.fitted)}};
    part["finished_angles"] = angles;
    part["measures"] = measures_json(c, job);
    part["greatest_deviation_mm"] = job.profile.greatest();
    part["greatest_deviation_on_flats_mm"] = job.profile.worst_on_flats.off;
    part["deviations"] = deviations_json(c, job);
    part["finished_profile_x_y_mm"] = profile;
    return part;
}

Json rules_json(const files::Case& c, const job::Findings& of_trade) {
    Json rules = Json::array();
    for (const Finding& f : of_trade) {
        if (f.severity == Severity::not_checked) continue;
        const FindingPlace& place = f.place;
        const bool on_bend = place.of == On::bend, on_step = place.of == On::step;
        const char* const on = on_bend ? "bend" : on_step ? "step" : "cutout";
        const job::RuleFacts& facts = job::facts_of(f.rule);
        rules.push_back({{"rule", facts.name},
                         {"on", on},
                         {"number", 1 + (on_bend   ? place.bend
                                         : on_step ? place.step
                                                   : place.cutout)},
                         {"place", job::place_words(c, place)},
                         {"figure", f.figure},
                         {"limit", f.limit},
                         {"unit", facts.unit},
                         {"stops", f.severity == Severity::stops},
                         {"words", job::finding_words(c, f)},
                         {"source", job::source_of(f)}});
    }
    return rules;
}

const char* section_words(const files::Case& c) {
    const double hold = material::width_hold(c.width / c.thickness);
    if (hold >= 1.0) return "plane strain";
    return hold <= 0.0 ? "uniaxial" : "between plane strain and uniaxial";
}

}  // namespace

std::string results_json(const files::Case& c, const job::JobResult& job) {
    return results_json(c, job, job::shop_report(c, job));
}

std::string results_json(const files::Case& c, const job::JobResult& job, const job::ShopReport& shop) {
    Json steps = Json::array();
    for (std::size_t i = 0; i < job.steps.size(); ++i)
        steps.push_back(step_json(c, job, static_cast<int>(i)));
    const job::Findings of_trade = job::of_group(job.findings, job::RuleGroup::trade);
    const auto told = [&](const job::Findings& list, Severity severity) {
        return job::sentences(c, job::with(list, severity));
    };
    const Json all = {{"format", 2},
                      {"title", c.title},
                      {"material", c.material.name},
                      {"thickness_mm", c.thickness},
                      {"width_mm", c.width},
                      {"section", section_words(c)},
                      {"width_hold", material::width_hold(c.width / c.thickness)},
                      {"feasible", job.feasible()},
                      {"verdict", job::verdict_words(job)},
                      {"findings", told(job.findings, Severity::stops)},
                      {"rules", rules_json(c, of_trade)},
                      {"rules_not_checked", told(of_trade, Severity::not_checked)},
                      {"steps", steps},
                      {"part", part_json(c, job)},
                      {"press", press_json(c, shop)},
                      {"tools", tools_json(c, shop)},
                      {"cost", c.cost ? cost_json(c, shop, shop.rates.batch) : Json(nullptr)},
                      {"shop_cautions", told(shop.findings, Severity::caution)},
                      {"shop_not_checked", told(shop.findings, Severity::not_checked)}};
    return all.dump(1) + "\n";
}

}  // namespace overbend::documents
