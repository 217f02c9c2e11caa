#include "scenes/commands/blank_table.h"

#include <cmath>
#include <cstdio>
#include <nlohmann/json.hpp>

#include "render/picture/cautions.h"
#include "scenes/commands/options.h"
#include "scenes/documents/report/part_sheets.h"
#include "scenes/job/run/job_rules.h"
#include "sim/units.h"

namespace overbend::commands {

namespace {

using job::FlatBend;
using job::FlatPattern;
using nlohmann::ordered_json;

// "-" where nothing was simulated.
std::string figure(bool there, double value, int decimals) {
    return there ? fixed(value, decimals) : "-";
}

void print_bends(const files::Case& c, const FlatPattern& pattern) {
    std::printf("\n    %-16s %8s %8s %5s %7s %7s %7s | %9s %7s %8s | %7s %8s\n", "bend", "line", "from",
                "turn", "angle", "radius", "radius", "allowance", "DIN", "hand-", "DIN", "handbook");
    std::printf("    %-16s %8s %8s %5s %7s %7s %7s | %9s %7s %8s | %7s %8s\n", "", "at", "last", "", "",
                "drawn", "made", "mechanics", "6935", "book", "less m.", "less m.");
    std::printf("    %-16s %8s %8s %5s %7s %7s %7s | %9s %7s %8s | %7s %8s\n", "", "mm", "mm", "", "deg",
                "mm", "mm", "mm", "mm", "mm", "mm", "mm");
    double last = 0.0;
    const bool made = pattern.simulated;
    for (const FlatBend& b : pattern.bends) {
        const files::Bend& bend = c.part.bends[b.bend];
        std::printf("    %-16s %8.2f %8.2f %5s %7.1f %7.2f %7s | %9s %7.3f %8.3f | %7s %8s\n",
                    bend.name.c_str(), b.at, b.at - last, bend.angle > 0.0 ? "up" : "down",
                    std::abs(bend.angle) / degree, bend.inside_radius, figure(made, b.made_radius, 2).c_str(),
                    figure(made, b.mechanics, 3).c_str(), b.din, b.handbook,
                    figure(made, b.din - b.mechanics, 3).c_str(),
                    figure(made, b.handbook - b.mechanics, 3).c_str());
        last = b.at;
    }
    std::printf("    %-16s %8.2f %8.2f\n", "right end", pattern.blank.length, pattern.blank.length - last);
}

void print_lengths(const FlatPattern& pattern) {
    std::printf("\nDeveloped length: ");
    if (pattern.simulated) std::printf("%.2f mm by the mechanics, ", pattern.mechanics);
    std::printf("%.2f mm by DIN 6935, %.2f mm by the handbook rule.\n", pattern.din, pattern.handbook);
}

void print_cutouts(const files::Case& c, const FlatPattern& pattern) {
    if (pattern.cutouts.empty()) return;
    std::printf("\n    %-16s %8s %8s %14s %10s %10s  %s\n", "cut-out", "at", "across", "size", "to bend",
                "least", "nearest bend");
    std::printf("    %-16s %8s %8s %14s %10s %10s\n", "", "mm", "mm", "mm", "mm", "mm");
    for (std::size_t i = 0; i < pattern.cutouts.size(); ++i) {
        const files::Cutout& cut = c.cutouts[i];
        const job::FlatCutout& flat = pattern.cutouts[i];
        const bool round = cut.length == cut.width;
        const std::string size = round ? "hole " + fixed(cut.width, 1)
                                       : "slot " + fixed(cut.length, 1) + "x" + fixed(cut.width, 1);
        std::printf("    %-16zu %8.2f %8.2f %14s %10.2f %10.2f  %s%s\n", i + 1, cut.at, cut.across,
                    size.c_str(), flat.edge_to_bend, flat.least, c.part.bends[flat.bend].name.c_str(),
                    flat.too_near() ? ": too close" : "");
    }
}

}  // namespace

void print_pattern(const files::Case& c, const FlatPattern& pattern) {
    std::printf("%s\n%s, %g mm thick, %g mm wide; blank %.2f mm long, %.1f g\n", c.title.c_str(),
                c.material.title.c_str(), c.thickness, c.width, pattern.blank.length, pattern.mass_g);
    std::printf("%s\n", documents::how_found(pattern));
    if (c.steps.empty())
        std::printf(
            "The case has no steps, so there are no bend lines by the mechanics. Run `overbend plan` "
            "first.\n");
    print_bends(c, pattern);
    print_lengths(pattern);
    print_cutouts(c, pattern);
    bool any = false;
    for (const plan::RuleFinding& f : pattern.rules.findings) {
        if (!documents::on_the_blank(f)) continue;
        if (!any) std::printf("\nCautions from shop rules:\n");
        any = true;
        std::printf("  - %s: %s [%s]\n", job::place_words(c, f).c_str(), f.words.c_str(), f.source.c_str());
    }
    if (pattern.simulated)
        std::printf("\nWith these bend lines, the profile deviates from the drawing by at most %.2f mm.\n",
                    pattern.job.profile.greatest());
    for (const std::string& f : pattern.job.findings) std::printf("  - %s\n", f.c_str());
    std::printf("\n%s\n", picture::estimate_words().c_str());
}

ordered_json pattern_json(const files::Case& c, const FlatPattern& pattern) {
    ordered_json bends = ordered_json::array(), cutouts = ordered_json::array(),
                 rules = ordered_json::array();
    const auto known = [&](double value) {
        return pattern.simulated ? ordered_json(value) : ordered_json(nullptr);
    };
    for (const FlatBend& b : pattern.bends) {
        const files::Bend& bend = c.part.bends[b.bend];
        bends.push_back({{"name", bend.name},
                         {"at_mm", b.at},
                         {"angle_deg", bend.angle / degree},
                         {"turn", bend.angle > 0.0 ? "up" : "down"},
                         {"inside_radius_mm", bend.inside_radius},
                         {"inside_radius_made_mm", known(b.made_radius)},
                         {"mid_line_stretch", known(b.mid_stretch)},
                         {"allowance_mechanics_mm", known(b.mechanics)},
                         {"allowance_din_6935_mm", b.din},
                         {"allowance_handbook_mm", b.handbook}});
    }
    for (std::size_t i = 0; i < pattern.cutouts.size(); ++i) {
        const files::Cutout& cut = c.cutouts[i];
        const job::FlatCutout& flat = pattern.cutouts[i];
        cutouts.push_back({{"at_mm", cut.at},
                           {"across_mm", cut.across},
                           {"length_mm", cut.length},
                           {"width_mm", cut.width},
                           {"nearest_bend", c.part.bends[flat.bend].name},
                           {"edge_to_bend_mm", flat.edge_to_bend},
                           {"least_mm", flat.least},
                           {"too_near", flat.too_near()}});
    }
    for (const plan::RuleFinding& f : pattern.rules.findings)
        if (documents::on_the_blank(f)) rules.push_back(job::place_words(c, f) + ": " + f.words);
    return {{"format", 1},
            {"title", c.title},
            {"material", c.material.name},
            {"thickness_mm", c.thickness},
            {"width_mm", c.width},
            {"simulated", pattern.simulated},
            {"blank_length_mm", pattern.blank.length},
            {"mass_g", pattern.mass_g},
            {"developed_mechanics_mm", known(pattern.mechanics)},
            {"developed_din_6935_mm", pattern.din},
            {"developed_handbook_mm", pattern.handbook},
            {"greatest_deviation_mm", known(pattern.job.profile.greatest())},
            {"bends", bends},
            {"cutouts", cutouts},
            {"cautions", rules},
            {"findings", pattern.job.findings}};
}

}  // namespace overbend::commands
