// Press, tools and cost on a job's page: what the shop's look at the job came to, as tables.

#include <algorithm>
#include <cmath>

#include "render/report/inline_svg.h"
#include "scenes/documents/report/cost_chart.h"
#include "scenes/documents/report/page_parts.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

constexpr chart::ChartSize cost_chart{960, 520};
const char* const none = "\u2013";

const char* within_words(shop::Verdict verdict) {
    switch (verdict) {
        case shop::Verdict::fine:
            return "within";
        case shop::Verdict::thin:
            return "near the limit";
        case shop::Verdict::over:
            return "beyond";
    }
    return "";
}

std::string capital(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
    return text;
}

// Enough digits to distinguish it from its limit, and no meaningless ones.
std::string readable(double value) {
    const double size = std::abs(value);
    return figure(value, size >= 100.0 ? 0 : size >= 10.0 ? 1 : size >= 0.1 ? 2 : 4);
}

double share(const shop::Check& check) {
    return check.limit > 0.0 ? check.figure / check.limit : 0.0;
}

struct Tightest {
    const shop::Check* check;
    int step;
};

// Of every kind of check the one nearest to its limit, in the order of the checks.
std::vector<Tightest> tightest_of(const job::ShopReport& shop) {
    std::vector<Tightest> found;
    for (const job::StrokeOnPress& s : shop.strokes)
        for (const shop::Check& check : s.checks) {
            const auto same = std::find_if(found.begin(), found.end(),
                                           [&](const Tightest& t) { return t.check->what == check.what; });
            if (same == found.end())
                found.push_back({&check, s.step});
            else if (share(check) > share(*same->check))
                *same = {&check, s.step};
        }
    return found;
}

report::Table checks_table(const files::Case& c, const job::ShopReport& shop) {
    report::Table table{
        "Press: required and available, for the most demanding stroke",
        {{"Check", "", false},
         {"Stroke", "", false},
         {"Figure", ""},
         {"Limit", ""},
         {"Margin", "times"},
         {"Verdict", "", false},
         {"Description", "", false}},
        {},
        "Margin: limit divided by value; above 1 is within the limit. For the shut height, the value is how "
        "far down the ram comes and the limit is the height of the closed tools."};
    for (const Tightest& t : tightest_of(shop)) {
        const double part = share(*t.check);
        table.rows.push_back({capital(t.check->what), words("%d. ", t.step + 1) + c.steps[t.step].name,
                              readable(t.check->figure) + " " + t.check->unit,
                              readable(t.check->limit) + " " + t.check->unit,
                              part <= 0.0    ? none
                              : part < 0.001 ? std::string("over 1000")
                                             : figure(1.0 / part, part > 0.1 ? 2 : 0),
                              within_words(t.check->verdict), t.check->words});
    }
    return table;
}

report::Table strokes_table(const files::Case& c, const job::ShopReport& shop) {
    report::Table table{"The strokes on the press",
                        {{"Stroke", "", false},
                         {"Peak force", "kN"},
                         {"Load offset", "mm"},
                         {"Work", "J"},
                         {"Shut height", "mm"},
                         {"Opening to remove the part", "mm"},
                         {"Cycle", "s"}},
                        {},
                        "Shut height: from bed to ram at the stop. Opening: how far the ram must rise so "
                        "that the strip can come out. Cycle: ram only, without loading."};
    for (const job::StrokeOnPress& s : shop.strokes) {
        const shop::StrokeDemand& d = s.demand;
        table.rows.push_back({words("%d. ", s.step + 1) + c.steps[s.step].name,
                              figure(d.peak_force * d.strip_width / 1000.0, 2), figure(d.load_centre, 2),
                              figure(d.work, 2), figure(d.tools_closed, 1), figure(d.part_room, 1),
                              figure(s.cycle_s, 1)});
    }
    return table;
}

void add_press(const files::Case& c, const job::ShopReport& shop, report::PageShop& to) {
    if (!c.press) return;
    double cycles = 0.0;
    for (const job::StrokeOnPress& s : shop.strokes) cycles += s.cycle_s;
    to.press_words = {words("The press is '%s', rated at %g kN, with a stroke of %g mm. ",
                            c.press->title.c_str(), c.press->force, c.press->stroke) +
                      words("Its ram moves for %.1f s per part.", cycles)};
    to.press_tables = {checks_table(c, shop), strokes_table(c, shop)};
}

bool is_looked_at(const files::Case& c, const job::ToolInShop& t) {
    return c.tools[t.tool].make.card.has_value() || c.tools[t.tool].make.rating.has_value();
}

report::Table strength_table(const files::Case& c, const job::ShopReport& shop) {
    report::Table table{
        "Stresses in the tools, at the highest load of each",
        {{"Tool", "", false},
         {"Steel", "", false},
         {"Load", "kN/m"},
         {"Rated", "kN/m"},
         {"Weakest section", "mm"},
         {"Tension", "MPa"},
         {"Compression", "MPa"},
         {"Contact", "MPa"},
         {"Margin", "times"}},
        {},
        "Weakest section: the section nearest to the limit of its steel, with its thickness. Contact: "
        "greatest pressure on a rounded edge. Margin: allowed stress divided by actual stress, the smaller "
        "of section and contact; above 1 is within the limit. Stresses are nominal: at an inner corner they "
        "are higher, at a sharp one two or three times."};
    for (const job::ToolInShop& t : shop.tools) {
        const files::Tool& tool = c.tools[t.tool];
        const std::optional<double> margin = job::steel_margin(c, t);
        table.rows.push_back({"'" + tool.name + "'", tool.make.card ? tool.make.card->title : "not given",
                              figure(t.peak, 0), tool.make.rating ? figure(*tool.make.rating, 0) : none,
                              t.section ? figure(t.section->load.cut.thickness, 1) : none,
                              t.section ? figure(t.section->load.tension, 0) : none,
                              t.section ? figure(t.section->load.compression, 0) : none,
                              t.contact ? figure(t.contact->contact.pressure, 0) : none,
                              margin ? figure(*margin, 2) : none});
    }
    return table;
}

report::Table making_table(const files::Case& c, const job::ShopReport& shop) {
    report::Table table{
        "Making the tools",
        {{"Tool", "", false},
         {"Strokes", ""},
         {"Length", "mm"},
         {"Mass", "kg"},
         {"Cut from a block of", "mm", false},
         {"Mill", "h"},
         {"Wire", "h"}},
        {},
        "The block is squared on the mill, the profile cut by wire erosion. Length: along the bend line."};
    for (const job::ToolInShop& t : shop.tools)
        table.rows.push_back({"'" + c.tools[t.tool].name + "'", std::to_string(t.steps.size()),
                              figure(t.length, 0), figure(t.stock.mass, 2),
                              t.made ? words("%.0f \u00d7 %.0f \u00d7 %.0f", t.stock.block_wide,
                                             t.stock.block_high, t.stock.block_long)
                                     : std::string("bought"),
                              t.made ? figure(t.stock.milling_hours, 2) : none,
                              t.made ? figure(t.stock.erosion_hours, 2) : none});
    return table;
}

report::Table springs_table(const files::Case& c, const job::ShopReport& shop) {
    report::Table table{"Springs of pads and clamps",
                        {{"Tool", "", false},
                         {"Springs", "", false},
                         {"Deflection", "mm"},
                         {"Wire", "mm"},
                         {"Coil", "mm"},
                         {"Active turns", ""},
                         {"Rate, each", "N/mm"},
                         {"Force, each", "N", false},
                         {"Shear", "MPa"},
                         {"Allowed", "MPa"},
                         {"Free", "mm"},
                         {"Solid", "mm"},
                         {"Slenderness", ""}},
                        {},
                        "Chosen: the case gives only a force, and these springs are sufficient. Shear: with "
                        "Wahl's factor, at the end of the travel. Slenderness: free length divided by coil "
                        "diameter; from 5.26 a spring buckles between flat plates. Lengths of springs given "
                        "in the case: the shortest that allow this deflection."};
    for (const job::ToolInShop& t : shop.tools) {
        if (!t.springs) continue;
        const shop::ChosenSpring& s = t.springs->each;
        const bool given = t.springs->given;
        table.rows.push_back({"'" + c.tools[t.tool].name + "'",
                              words("%d, %s", t.springs->count, given ? "the case's" : "chosen"),
                              figure(t.springs->travel, 1), figure(s.spring.wire, 2),
                              figure(s.spring.coil_diameter, 2), figure(s.spring.turns, 1), figure(s.rate, 1),
                              figure(s.force_start, 0) + " to " + figure(s.force_end, 0), figure(s.stress, 0),
                              figure(s.allowed_stress, 0), figure(s.free_length, 1),
                              figure(s.solid_length, 1), figure(s.slenderness, 2)});
    }
    return table;
}

void add_tools(const files::Case& c, const job::ShopReport& shop, report::PageShop& to) {
    const report::Table springs = springs_table(c, shop);
    if (!springs.rows.empty()) to.tool_tables = {springs};
    const bool any = std::any_of(shop.tools.begin(), shop.tools.end(),
                                 [&](const job::ToolInShop& t) { return is_looked_at(c, t); });
    if (!any) return;
    for (const job::SharedBlock& block : shop.shared)
        to.tool_words.push_back(
            words("'%s' serves %d strokes: %.2f kg of steel saved compared with separate blocks.",
                  c.tools[block.tool].name.c_str(), block.uses, block.saved_kg));
    to.tool_tables.insert(to.tool_tables.begin(), {strength_table(c, shop), making_table(c, shop)});
}

report::Table groups_table(const job::ShopReport& shop) {
    const shop::CostSheet& cost = shop.cost;
    const int batch = shop.rates.batch;
    const std::string &money = cost.money, of_many = words("Per part (batch of %d)", batch);
    report::Table table{"Cost by group",
                        {{"Group", "", false},
                         {"Per part", money},
                         {"Per batch", money},
                         {of_many + ", a part", money},
                         {"Share", "%"}},
                        {},
                        "The last columns spread the cost per batch over its parts."};
    const double whole = cost.per_part(batch);
    for (const shop::CostLine& line : cost.lines) {
        const double each = line.per_part.value + line.per_batch.value / batch;
        table.rows.push_back({capital(line.group), figure(line.per_part.value, 4),
                              figure(line.per_batch.value, 2), figure(each, 4),
                              whole > 0.0 ? figure(100.0 * each / whole, 1) : none});
    }
    table.rows.push_back({"All", figure(cost.variable, 4), figure(cost.fixed, 2), figure(whole, 4), "100.0"});
    return table;
}

report::Table tool_costs_table(const shop::CostSheet& cost) {
    report::Table table{"Cost of the tools", {{"Tool", "", false}, {"Cost", cost.money}}, {}};
    for (const shop::ToolCost& t : cost.tools)
        table.rows.push_back({"'" + t.name + "'", figure(t.cost.value, 2)});
    return table;
}

// "mass of the blank x price of the strip; mass of the blank 0.031 kg, ..."
std::string trace_words(const shop::Traced& t) {
    std::string inputs;
    for (const shop::TracedInput& in : t.inputs)
        inputs += (inputs.empty() ? "" : ", ") + in.name + words(" %.5g", in.value) +
                  (in.unit.empty() ? "" : " " + in.unit);
    return words("%.5g = ", t.value) + t.formula + (inputs.empty() ? "" : "; with " + inputs) + ".";
}

void add_cost(const files::Case& c, const job::ShopReport& shop, report::PageShop& to) {
    if (!shop.cost_asked && !shop.against) return;
    const shop::CostSheet& cost = shop.cost;
    const int batch = shop.rates.batch;
    const char* const money = cost.money.c_str();
    to.cost_words = {
        words("In a batch of %d, a part costs %.3f %s and the batch %.2f %s. ", batch, cost.per_part(batch),
              money, cost.of_batch(batch), money) +
            words("A part takes %.1f s of press time with handling; %.1f per cent of the strip ends up in "
                  "the part%s; a thousand parts take %.2f kWh.",
                  cost.press_time, 100.0 * cost.strip_yield,
                  cost.blanks_a_sheet > 0 ? words(", %d blanks per sheet", cost.blanks_a_sheet).c_str() : "",
                  cost.energy_per_thousand),
        "Rates that the case does not give are common values."};
    if (shop.against)
        to.cost_words.push_back("Alternative: " + shop.against->name + ". " +
                                capital(job::break_even_words("this job", cost, *shop.against)));
    to.cost = {
        report::inline_svg(
            chart::draw_cost_over_batch(cost_over_batch_data(c, shop), cost_chart, picture::Theme::light),
            words("Cost of a part over the batch size, falling from %.2f %s for a single part to %.3f %s of "
                  "a batch of %d",
                  cost.per_part(1), money, cost.per_part(batch), money, batch)),
        "Cost of a part over the batch size: tools and setting up are spread over more parts. Both axes are "
        "logarithmic."};
    to.cost_tables = {groups_table(shop), tool_costs_table(cost)};
    for (const shop::CostLine& line : cost.lines) {
        if (!line.per_part.formula.empty())
            to.traces.push_back({capital(line.group) + ", a part", trace_words(line.per_part)});
        if (!line.per_batch.formula.empty())
            to.traces.push_back({capital(line.group) + ", a batch", trace_words(line.per_batch)});
    }
    for (const shop::ToolCost& t : cost.tools)
        to.traces.push_back({"Tool '" + t.name + "'", trace_words(t.cost)});
}

}  // namespace

void add_shop(const files::Case& c, const job::ShopReport& shop, report::Page& page) {
    add_press(c, shop, page.shop);
    add_tools(c, shop, page.shop);
    add_cost(c, shop, page.shop);
    for (const std::string& line : shop.cautions) page.shop.cautions.push_back(capital(line) + ".");
    for (const std::string& line : shop.not_checked) page.shop.not_checked.push_back(capital(line) + ".");
}

}  // namespace overbend::documents
