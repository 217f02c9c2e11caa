// Press, tools and cost: what the shop's look at the job came to.

#include <algorithm>
#include <cmath>

#include "scenes/documents/tables/job_tables.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

Cell unless(bool unknown, double value) {
    return unknown ? Cell() : Cell(value);
}

const char* within_words(Severity severity) {
    if (severity == Severity::within) return "within";
    return severity == Severity::stops ? "beyond" : "near the limit";
}

// Enough digits to distinguish it from its limit, and no meaningless ones.
Cell readable(double value, const char* unit) {
    const double size = std::abs(value);
    return {value, size >= 100.0 ? 0 : size >= 10.0 ? 1 : size >= 0.1 ? 2 : 4, unit};
}

double share(const Finding& check) {
    return check.limit > 0.0 ? check.figure / check.limit : 0.0;
}

// Above 1 within.
Cell margin_of(const Finding& check) {
    const double part = share(check);
    if (part <= 0.0) return {};
    return part < 0.001 ? Cell("over 1000") : Cell(1.0 / part, part > 0.1 ? 2 : 0, "");
}

std::string kind_of(const Finding& check) {
    return job::facts_of(check.rule).name;
}

// In the order in which they are asked.
job::Findings checks_of(const job::ShopReport& shop, Checks which) {
    job::Findings found;
    for (const job::StrokeOnPress& s : shop.strokes)
        for (const Finding& check : s.checks) {
            const auto same = std::find_if(found.begin(), found.end(), [&](const Finding& f) {
                return which == Checks::tightest && kind_of(f) == kind_of(check);
            });
            if (same == found.end())
                found.push_back(check);
            else if (share(check) > share(*same))
                *same = check;
        }
    return found;
}

std::string stroke_name(const files::Case& c, int step) {
    return words("%d. ", step + 1) + c.steps[step].name;
}

}  // namespace

std::string capital(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
    return text;
}

Table press_checks_table(const files::Case& c, const job::ShopReport& shop, Checks which) {
    Table table{
        which == Checks::all ? "Press: required and available"
                             : "Press: required and available, for the most demanding stroke",
        {{"Check", "", in_words, "check"},
         {"Stroke", "", in_words, "stroke"},
         {"Value", "", 2, "value"},
         {"Limit", "", 2, "limit"},
         {"Margin", "times", 2},
         {"Verdict"},
         {"Description"}},
        {},
        {"Margin: limit divided by value; above 1 is within the limit. For the shut height, the value is "
         "how far down the ram comes and the limit is the height of the closed tools."}};
    for (const Finding& check : checks_of(shop, which)) {
        const char* const unit = job::facts_of(check.rule).unit;
        table.rows.push_back({capital(kind_of(check)), stroke_name(c, check.place.step),
                              readable(check.figure, unit), readable(check.limit, unit), margin_of(check),
                              within_words(check.severity), job::finding_words(c, check)});
        table.rows.back()[2].severity = check.severity;
    }
    return table;
}

Table press_strokes_table(const files::Case& c, const job::ShopReport& shop) {
    Table table{
        "The strokes on the press",
        {{"Stroke", "", in_words, "stroke"},
         {"Peak force", "kN", 2, "force", "force_kN"},
         {"Load offset", "mm", 2, "", "load_centre_mm"},
         {"Work", "J", 2, "work", "energy_J"},
         {"Shut height", "mm", 1, "shut", "tools_closed_mm"},
         {"Opening to remove the part", "mm", 1, "opening", "part_room_mm"},
         {"Cycle", "s", 1, "cycle", "cycle_s"}},
        {},
        {"Shut height: from bed to ram at the stop. Opening: how far the ram must rise so that the strip "
         "can come out. Cycle: ram only, without loading."}};
    for (const job::StrokeOnPress& s : shop.strokes) {
        const shop::StrokeDemand& d = s.demand;
        table.rows.push_back({stroke_name(c, s.step), d.peak_force * d.strip_width / 1000.0, d.load_centre,
                              d.work, d.tools_closed, d.part_room, s.cycle_s});
    }
    return table;
}

Table strength_table(const files::Case& c, const job::ShopReport& shop) {
    Table table{
        "Stresses in the tools, at the highest load of each",
        {{"Tool"},
         {"Steel"},
         {"Load", "kN/m", 1},
         {"Rated", "kN/m", 0},
         {"Weakest section", "mm", 1},
         {"Tension", "MPa", 0},
         {"Compression", "MPa", 0},
         {"Contact", "MPa", 0},
         {"Margin", "times", 2}},
        {},
        {"Weakest section: the section nearest to the limit of its steel, with its thickness. Contact: "
         "mean pressure on a rounded edge; a tool is indented at 10.6 MPa for each Vickers unit. Margin: "
         "allowed stress divided by actual stress, the "
         "smaller of section and contact; above 1 is within the limit. Stresses are nominal: at an inner "
         "corner they are higher, at a sharp one two or three times."}};
    for (const job::ToolInShop& t : shop.tools) {
        const files::Tool& tool = c.tools[t.tool];
        const std::optional<double> margin = job::steel_margin(c, t);
        const shop::SectionLoad load = t.section ? t.section->load : shop::SectionLoad{};
        table.rows.push_back({"'" + tool.name + "'", tool.make.card ? tool.make.card->title : "not given",
                              t.peak, unless(!tool.make.rating, tool.make.rating.value_or(0.0)),
                              unless(!t.section, load.cut.thickness), unless(!t.section, load.tension),
                              unless(!t.section, load.compression),
                              t.contact ? Cell(t.contact->contact.mean) : Cell(),
                              unless(!margin, margin.value_or(0.0))});
        if (margin && *margin < 1.0) table.rows.back().back().severity = Severity::caution;
    }
    return table;
}

Table making_table(const files::Case& c, const job::ShopReport& shop) {
    Table table{"Making the tools",
                {{"Tool"},
                 {"Strokes", "", 0},
                 {"Length", "mm", 0},
                 {"Mass", "kg", 2},
                 {"Cut from a block of", "mm"},
                 {"Mill", "h", 2},
                 {"Wire", "h", 2}},
                {},
                {"The block is squared on the mill, the profile cut by wire erosion. Length: along the bend "
                 "line."}};
    for (const job::ToolInShop& t : shop.tools) {
        const shop::ToolStock& s = t.stock;
        table.rows.push_back(
            {"'" + c.tools[t.tool].name + "'", 1.0 * static_cast<double>(t.steps.size()), t.length, s.mass,
             t.made ? words("%.0f x %.0f x %.0f", s.block_wide, s.block_high, s.block_long) : "bought",
             unless(!t.made, s.milling_hours), unless(!t.made, s.erosion_hours)});
    }
    return table;
}

Table springs_table(const files::Case& c, const job::ShopReport& shop) {
    Table table{"Springs of pads and clamps",
                {{"Tool"},
                 {"Springs"},
                 {"Wire's kind"},
                 {"Deflection", "mm", 1},
                 {"Wire", "mm", 2},
                 {"Coil", "mm", 2},
                 {"Active turns", "", 1},
                 {"Rate, each", "N/mm", 1},
                 {"Force, each", "N"},
                 {"Shear", "MPa", 0},
                 {"Allowed", "MPa", 0},
                 {"Free", "mm", 1},
                 {"Installed", "mm", 1},
                 {"Solid", "mm", 1},
                 {"Slenderness", "", 2}},
                {},
                {"Chosen: the case gives only a force, and these springs are sufficient. Shear: with Wahl's "
                 "factor, at the end of the travel. Slenderness: free length divided by coil diameter; from "
                 "5.26 a spring buckles between flat plates. Lengths of springs given in the case: the "
                 "shortest that allow this deflection."}};
    for (const job::ToolInShop& t : shop.tools) {
        if (!t.springs) continue;
        const shop::ChosenSpring& s = t.springs->each;
        table.rows.push_back({"'" + c.tools[t.tool].name + "'",
                              words("%d, %s", t.springs->count, t.springs->given ? "the case's" : "chosen"),
                              s.wire, t.springs->travel, s.spring.wire, s.spring.coil_diameter,
                              s.spring.turns, s.rate, words("%.0f to %.0f", s.force_start, s.force_end),
                              s.stress, s.allowed_stress, s.free_length, s.installed_length, s.solid_length,
                              s.slenderness});
    }
    return table;
}

Table cost_table(const job::ShopReport& shop) {
    const shop::CostSheet& cost = shop.cost;
    const int batch = shop.rates.batch;
    Table table{
        "Cost",
        {{"Cost"}, {"Value", "", 2}},
        {{words("Per part (batch of %d)", batch), Cell(cost.per_part(batch), 3, cost.money)},
         {"Whole batch", Cell(cost.of_batch(batch), 2, cost.money)},
         {"Press time per part, with handling", Cell(cost.press_time, 1, "s")},
         {"Material used in the part", Cell(100.0 * cost.strip_yield, 1, "%")},
         {"Energy per thousand parts", Cell(cost.energy_per_thousand, 2, "kWh")}},
        {shop.cost_asked ? "Rates that the case does not give are the middles of common ranges."
                         : "The case has no [cost] table, so rates are the middles of common ranges."}};
    if (cost.blanks_a_sheet > 0)
        table.rows.push_back({"Blanks per sheet", Cell(1.0 * cost.blanks_a_sheet, 0, "")});
    return table;
}

Table groups_table(const job::ShopReport& shop, const std::vector<int>& batches) {
    const shop::CostSheet& cost = shop.cost;
    const std::string& money = cost.money;
    Table table{"Cost by group",
                {{"Group", "", in_words, "group"},
                 {"Per part", money, 4, "per part"},
                 {"Per batch", money, 2, "per batch"}},
                {},
                {"The last columns spread the cost per batch over its parts."}};
    std::vector<Cell> all = {"All", cost.variable, cost.fixed}, whole = {"Whole batch", "", ""};
    for (const int batch : batches) {
        table.columns.push_back(
            {words("Per part (batch of %d)", batch), money, 4, words("part in %d", batch)});
        all.emplace_back(cost.per_part(batch));
        whole.emplace_back(cost.of_batch(batch), 2, "");
    }
    const int own = shop.rates.batch;
    table.columns.push_back({words("Share (batch of %d)", own), "%", 1});
    all.emplace_back(100.0), whole.emplace_back("");
    for (const shop::CostLine& line : cost.lines) {
        std::vector<Cell> row = {capital(line.group), line.per_part.value, line.per_batch.value};
        const auto each = [&](int batch) { return line.per_part.value + line.per_batch.value / batch; };
        for (const int batch : batches) row.emplace_back(each(batch));
        const double part = cost.per_part(own);
        row.push_back(part > 0.0 ? Cell(100.0 * each(own) / part) : Cell());
        table.rows.push_back(row);
    }
    table.rows.insert(table.rows.end(), {all, whole});
    return table;
}

Table tool_costs_table(const job::ShopReport& shop) {
    Table table{"Cost of the tools", {{"Tool"}, {"Cost", shop.cost.money, 2}}, {}};
    for (const shop::ToolCost& t : shop.cost.tools) table.rows.push_back({"'" + t.name + "'", t.cost.value});
    return table;
}

}  // namespace overbend::documents
