#include "scenes/documents/results/shop_json.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "scenes/documents/tables/job_tables.h"

namespace overbend::documents {

namespace {

using Json = nlohmann::ordered_json;

Json checks_json(const files::Case& c, const job::Findings& checks) {
    Json list = Json::array();
    for (const Finding& check : checks)
        list.push_back({{"what", job::facts_of(check.rule).name},
                        {"figure", check.figure},
                        {"limit", check.limit},
                        {"unit", job::facts_of(check.rule).unit},
                        {"verdict", job::verdict_word(check.severity)},
                        {"words", job::finding_words(c, check)},
                        {"source", job::source_of(check)}});
    return list;
}

Json section_json(const files::Case& c, const std::optional<job::WorstSection>& worst) {
    if (!worst) return nullptr;
    const shop::SectionLoad& load = worst->load;
    return {{"step", c.steps[worst->step].name},
            {"face", worst->face},
            {"travel_mm", worst->travel},
            {"from_x_y_mm", {load.cut.from.x(), load.cut.from.y()}},
            {"to_x_y_mm", {load.cut.to.x(), load.cut.to.y()}},
            {"thickness_mm", load.cut.thickness},
            {"axial_N_per_mm", load.axial},
            {"shear_N_per_mm", load.shear},
            {"bending_N_mm_per_mm", load.bending},
            {"tension_MPa", load.tension},
            {"compression_MPa", load.compression}};
}

Json contact_json(const files::Case& c, const std::optional<job::WorstContact>& worst) {
    if (!worst) return nullptr;
    return {{"step", c.steps[worst->step].name},
            {"x_y_mm", {worst->at.x(), worst->at.y()}},
            {"radius_mm", worst->radius},
            {"force_N_per_mm", worst->force},
            {"pressure_MPa", worst->contact.pressure},
            {"mean_pressure_MPa", worst->contact.mean},
            {"half_width_mm", worst->contact.half_width},
            {"strip_yields", worst->contact.capped}};
}

Json springs_json(const std::optional<job::SpringAdvice>& advice) {
    if (!advice) return nullptr;
    const shop::ChosenSpring& s = advice->each;
    return {{"given", advice->given},
            {"count", advice->count},
            {"rows", advice->rows.rows},
            {"wire", s.wire},
            {"wire_mm", s.spring.wire},
            {"coil_mm", s.spring.coil_diameter},
            {"turns", s.spring.turns},
            {"shear_modulus_MPa", s.spring.shear_modulus},
            {"rate_N_per_mm", s.rate},
            {"travel_mm", advice->travel},
            {"force_start_N", s.force_start},
            {"force_end_N", s.force_end},
            {"solid_length_mm", s.solid_length},
            {"stress_MPa", s.stress},
            {"allowed_stress_MPa", s.allowed_stress},
            {"free_length_mm", s.free_length},
            {"installed_length_mm", s.installed_length},
            {"free_length_over_coil", s.slenderness}};
}

Json traced_json(const shop::Traced& t) {
    Json inputs = Json::array();
    for (const shop::TracedInput& in : t.inputs)
        inputs.push_back({{"name", in.name}, {"value", in.value}, {"unit", in.unit}});
    return {{"value", t.value}, {"formula", t.formula}, {"inputs", inputs}};
}

Json shared_json(const files::Case& c, const job::ShopReport& shop) {
    Json list = Json::array();
    for (const job::SharedBlock& block : shop.shared)
        list.push_back(
            {{"tool", c.tools[block.tool].name}, {"uses", block.uses}, {"steel_saved_kg", block.saved_kg}});
    return list;
}

}  // namespace

Json row_json(const Table& table, std::size_t row) {
    Json object;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        const Cell& cell = table.rows[row][i];
        const std::string& key = table.columns[i].key;
        if (!key.empty()) object[key] = cell.number ? Json(*cell.number) : Json(cell.words);
    }
    return object;
}

Json press_json(const files::Case& c, const job::ShopReport& shop) {
    if (!c.press) return nullptr;
    double most = 0.0, cycles = 0.0;
    Json strokes = Json::array();
    const Table table = press_strokes_table(c, shop);
    for (std::size_t i = 0; i < shop.strokes.size(); ++i) {
        const job::StrokeOnPress& s = shop.strokes[i];
        Json stroke = {{"step", c.steps[s.step].name}};
        stroke.update(row_json(table, i));
        stroke["checks"] = checks_json(c, s.checks);
        most = std::max(most, stroke["force_kN"].get<double>()), cycles += s.cycle_s;
        strokes.push_back(stroke);
    }
    return {{"title", c.press->title},  {"name", c.press_name}, {"force_kN", c.press->force},
            {"greatest_used_kN", most}, {"cycles_s", cycles},   {"strokes", strokes}};
}

Json tools_json(const files::Case& c, const job::ShopReport& shop) {
    Json list = Json::array();
    for (const job::ToolInShop& t : shop.tools) {
        const files::Tool& tool = c.tools[t.tool];
        Json steps = Json::array();
        for (const int step : t.steps) steps.push_back(c.steps[step].name);
        Json mends = Json::array();
        for (const Finding& mend : t.mends) mends.push_back(job::finding_words(c, mend));
        list.push_back({{"name", tool.name},
                        {"kind", files::kind_word(tool)},
                        {"steel", tool.make.steel},
                        {"steel_title", tool.make.card ? tool.make.card->title : ""},
                        {"steps", steps},
                        {"bought", !t.made},
                        {"length_mm", t.length},
                        {"mass_kg", t.stock.mass},
                        {"block_mm", {t.stock.block_wide, t.stock.block_high, t.stock.block_long}},
                        {"block_kg", t.stock.block_mass},
                        {"milling_h", t.stock.milling_hours},
                        {"erosion_h", t.stock.erosion_hours},
                        {"peak_kN_per_m", t.peak},
                        {"section", section_json(c, t.section)},
                        {"contact", contact_json(c, t.contact)},
                        {"springs", springs_json(t.springs)},
                        {"checks", checks_json(c, t.checks)},
                        {"mends", mends}});
    }
    return list;
}

Json cost_json(const files::Case& c, const job::ShopReport& shop, int batch) {
    const shop::CostSheet& sheet = shop.cost;
    Json groups = Json::array(), tools = Json::array();
    for (const shop::CostLine& line : sheet.lines)
        groups.push_back({{"group", line.group},
                          {"per_part_at_batch", line.per_part.value + line.per_batch.value / batch},
                          {"per_part", traced_json(line.per_part)},
                          {"per_batch", traced_json(line.per_batch)}});
    for (const shop::ToolCost& t : sheet.tools) {
        Json tool = traced_json(t.cost);
        tool["tool"] = t.name;
        tools.push_back(tool);
    }
    return {{"money", sheet.money},
            {"batch", batch},
            {"per_part_at_batch", sheet.per_part(batch)},
            {"of_batch", sheet.of_batch(batch)},
            {"per_part", sheet.variable},
            {"per_batch", sheet.fixed},
            {"groups", groups},
            {"tools", tools},
            {"press_time_s", sheet.press_time},
            {"strip_yield", sheet.strip_yield},
            {"blanks_a_sheet", sheet.blanks_a_sheet},
            {"energy_kWh_per_thousand", sheet.energy_per_thousand},
            {"shared_blocks", shared_json(c, shop)}};
}

}  // namespace overbend::documents
