// The flat pattern: lengths, bend lines with their allowances, cut-outs.

#include <cmath>

#include "scenes/documents/tables/job_tables.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::documents {

Table lengths_table(const job::FlatPattern& p) {
    const auto known = [](bool there, double value) { return there ? Cell(value) : Cell(); };
    return {"Developed length",
            {{"Length"}, {"Figure", "mm", 2}},
            {{p.simulated ? "Blank, as simulated" : "Blank", p.blank.length},
             {"By the mechanics", known(p.simulated, p.mechanics)},
             {"By DIN 6935", p.din},
             {"By the handbook rule", p.handbook}}};
}

Table bend_lines_table(const files::Case& c, const job::FlatPattern& pattern) {
    Table table{"Bend lines, from the blank's left end",
                {{"Bend", "", in_words, "bend"},
                 {"Line at", "mm", 2, "line at"},
                 {"From previous", "mm", 2},
                 {"Direction"},
                 {"Angle", "deg", 2},
                 {"Inside radius drawn", "mm", 2},
                 {"Inside radius achieved", "mm", 2},
                 {"Bend allowance (mechanics)", "mm", 3, "mech."},
                 {"Bend allowance (DIN 6935)", "mm", 3, "DIN"},
                 {"Bend allowance (handbook)", "mm", 3, "handb."},
                 {"DIN less mechanics", "mm", 3},
                 {"Handbook less mechanics", "mm", 3}},
                {},
                {"The developed length is the sum of flats and bend allowances. Up and down apply with the "
                 "blank's left end on the left and its upper face up."}};
    const auto made = [&](double value) { return pattern.simulated ? Cell(value) : Cell(); };
    double last = 0.0;
    for (const job::FlatBend& b : pattern.bends) {
        const files::Bend& bend = c.part.bends[b.bend];
        table.rows.push_back({bend.name, b.at, b.at - last, bend.angle > 0.0 ? "up" : "down",
                              std::abs(bend.angle) / degree, bend.inside_radius, made(b.made_radius),
                              made(b.mechanics), b.din, b.handbook, made(b.din - b.mechanics),
                              made(b.handbook - b.mechanics)});
        last = b.at;
    }
    table.rows.push_back({"right end", pattern.blank.length, pattern.blank.length - last});
    table.rows.back().resize(table.columns.size(), "");
    return table;
}

Table cutouts_table(const files::Case& c, const job::FlatPattern& pattern) {
    Table table{"Cut-outs",
                {{"Cut-out", "", in_words, "cut-out"},
                 {"At", "mm", 2},
                 {"Across", "mm", 2},
                 {"Size", "mm"},
                 {"To the bend", "mm", 2, "to the bend"},
                 {"Minimum by rule", "mm", 2, "minimum"},
                 {"Nearest bend", "", in_words, "bend"}},
                {}};
    for (std::size_t i = 0; i < pattern.cutouts.size(); ++i) {
        const files::Cutout& cut = c.cutouts[i];
        const job::FlatCutout& flat = pattern.cutouts[i];
        const std::string size = cut.length == cut.width ? words("hole %.1f", cut.width)
                                                         : words("slot %.1f x %.1f", cut.length, cut.width);
        table.rows.push_back({std::to_string(i + 1), cut.at, cut.across, size, flat.edge_to_bend, flat.least,
                              c.part.bends[flat.bend].name + (flat.too_near() ? ": too close" : "")});
        if (flat.too_near()) table.rows.back()[4].severity = Severity::caution;
    }
    return table;
}

}  // namespace overbend::documents
