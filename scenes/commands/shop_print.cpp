#include "scenes/commands/shop_print.h"

#include <algorithm>
#include <cstdio>

#include "scenes/commands/options.h"
#include "sim/counted.h"

namespace overbend::commands {

namespace {

using job::ToolInShop;

std::string block_words(const shop::ToolStock& s) {
    return fixed(s.block_wide, 0) + "x" + fixed(s.block_high, 0) + "x" + fixed(s.block_long, 0);
}

std::string margin_words(const files::Case& c, const ToolInShop& t) {
    const std::optional<double> margin = job::steel_margin(c, t);
    return margin ? fixed(*margin, 2) : "-";
}

void print_tool(const files::Case& c, const ToolInShop& t) {
    const files::Tool& tool = c.tools[t.tool];
    const bool cut = t.section.has_value();
    std::printf("    %-16s %-8s %6.2f %14s %7s %7s %8s %8s %8s %8s %7s\n", tool.name.c_str(),
                tool.make.steel.empty() ? "-" : tool.make.steel.c_str(), t.stock.mass,
                t.made ? block_words(t.stock).c_str() : "bought",
                t.made ? fixed(t.stock.milling_hours, 2).c_str() : "-",
                t.made ? fixed(t.stock.erosion_hours, 2).c_str() : "-",
                cut ? fixed(t.section->load.cut.thickness, 1).c_str() : "-",
                cut ? fixed(t.section->load.tension, 0).c_str() : "-",
                cut ? fixed(t.section->load.compression, 0).c_str() : "-",
                t.contact ? fixed(t.contact->contact.pressure, 0).c_str() : "-", margin_words(c, t).c_str());
}

void print_springs(const files::Case& c, const ToolInShop& t) {
    if (!t.springs) return;
    const job::SpringAdvice& advice = *t.springs;
    const shop::ChosenSpring& s = advice.each;
    const char* const name = c.tools[t.tool].name.c_str();
    std::printf(
        "  - '%s' deflects %.1f mm: %s %s of %g mm %s, coil %g mm, %g active turns; %.1f N/mm each, "
        "%.0f to %.0f N, %.0f of %.0f MPa allowed",
        name, advice.travel, advice.given ? "the case's" : "for example",
        counted(static_cast<std::size_t>(advice.count), "spring").c_str(), s.spring.wire, s.wire.c_str(),
        s.spring.coil_diameter, s.spring.turns, s.rate, s.force_start, s.force_end, s.stress,
        s.allowed_stress);
    std::printf("; %s%.1f mm free, %.1f installed, %.1f solid\n", advice.given ? "at least " : "",
                s.free_length, s.installed_length, s.solid_length);
    if (advice.given) return;
    std::printf(
        "      spring = { wire_mm = %g, coil_mm = %g, turns = %g, shear_modulus_MPa = %g, count = %d, "
        "preload_N = %.1f }\n",
        s.spring.wire, s.spring.coil_diameter, s.spring.turns, s.spring.shear_modulus, advice.count,
        s.force_start * advice.count);
}

}  // namespace

void print_tools(const files::Case& c, const job::ShopReport& shop) {
    std::printf(
        "%s\nWhere the case gives no length, tools are as long as the strip is wide plus %.0f mm.\n\n",
        c.title.c_str(), job::tool_length(c, files::Tool{}) - c.width);
    std::printf("    %-16s %-8s %6s %14s %7s %7s %8s %8s %8s %8s %7s\n", "tool", "steel", "mass", "block",
                "milling", "erosion", "section", "tension", "compr.", "contact", "margin");
    std::printf("    %-16s %-8s %6s %14s %7s %7s %8s %8s %8s %8s\n", "", "", "kg", "mm", "h", "h", "mm",
                "MPa", "MPa", "MPa");
    for (const ToolInShop& t : shop.tools) print_tool(c, t);
    std::printf(
        "\nSection: the one nearest to the limit of its steel. Margin: allowed stress divided by actual "
        "stress,\nof section and contact; above 1 is within the limit.\n");
    bool any = false;
    for (const ToolInShop& t : shop.tools) {
        if (t.springs && !any) std::printf("\nSprings:\n");
        any = any || t.springs;
        print_springs(c, t);
    }
    for (const job::SharedBlock& block : shop.shared)
        std::printf("%s'%s' serves %d strokes: %.2f kg of steel saved compared with separate blocks.\n",
                    &block == &shop.shared.front() ? "\n" : "", c.tools[block.tool].name.c_str(), block.uses,
                    block.saved_kg);
    print_list("Problems:", shop.findings);
    print_list("Cautions:", shop.cautions);
    print_list("Not checked:", shop.not_checked);
    std::printf(
        "\nStresses are nominal: at an inner corner they are higher, at a sharp one two or three times.\n");
}

void print_cost(const files::Case& c, const job::ShopReport& shop, const std::vector<int>& batches) {
    const shop::CostSheet& sheet = shop.cost;
    std::printf("%s\nCosts in %s%s\n\n    %-12s %10s %10s", c.title.c_str(), sheet.money.c_str(),
                shop.cost_asked ? "" : ", at common rates, because the case has no [cost] table", "group",
                "per part", "per batch");
    for (const int batch : batches) std::printf(" %10s", ("of " + std::to_string(batch)).c_str());
    std::printf("\n");
    for (const shop::CostLine& line : sheet.lines) {
        std::printf("    %-12s %10.4f %10.2f", line.group.c_str(), line.per_part.value, line.per_batch.value);
        for (const int batch : batches)
            std::printf(" %10.4f", line.per_part.value + line.per_batch.value / batch);
        std::printf("\n");
    }
    std::printf("    %-12s %10.4f %10.2f", "per part", sheet.variable, sheet.fixed);
    for (const int batch : batches) std::printf(" %10.4f", sheet.per_part(batch));
    std::printf("\n    %-12s %10s %10s", "per batch", "", "");
    for (const int batch : batches) std::printf(" %10.2f", sheet.of_batch(batch));
    std::printf("\n\n");
    for (const shop::ToolCost& t : sheet.tools)
        std::printf("    %-24s %10.2f\n", ("tool '" + t.name + "'").c_str(), t.cost.value);
    std::printf("\n%.1f s of press time a part; %.1f per cent of the strip ends up in the part",
                sheet.press_time, 100.0 * sheet.strip_yield);
    if (sheet.blanks_a_sheet > 0) std::printf(", %d blanks per sheet", sheet.blanks_a_sheet);
    std::printf("; %.2f kWh per thousand parts.\n", sheet.energy_per_thousand);
    for (const job::SharedBlock& block : shop.shared)
        std::printf("'%s' serves %d strokes: %.2f kg of tool steel saved.\n",
                    c.tools[block.tool].name.c_str(), block.uses, block.saved_kg);
}

void print_shop(const job::ShopReport& shop) {
    print_list("Cautions of the shop:", shop.cautions);
    for (const std::string& what : shop.not_checked) std::printf("Not checked: %s.\n", what.c_str());
    if (shop.cost_asked)
        std::printf(
            "\nIn a batch of %d, a part costs %s %s (see `overbend cost`) and takes %.1f s of press time.\n",
            shop.rates.batch, fixed(shop.cost.per_part(shop.rates.batch), 3).c_str(), shop.cost.money.c_str(),
            shop.cost.press_time);
}

}  // namespace overbend::commands
