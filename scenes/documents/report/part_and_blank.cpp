// The part and its blank on a job's page.

#include <cmath>

#include "render/report/inline_svg.h"
#include "scenes/documents/report/page_parts.h"
#include "scenes/documents/report/part_sheets.h"
#include "scenes/job/run/fitted_blank.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

constexpr int drawing_height = 640;  // px

std::string missing(const files::Case& c, int flat, double by) {
    return words("flat %d of %g mm: ", flat + 1, c.part.flats[flat]) + figure(by, 2) + " mm";
}

report::Table bends_table(const files::Case& c, const job::FlatPattern& pattern) {
    report::Table table{"Bend lines, from the blank's left end",
                        {{"Bend", "", false},
                         {"Line at", "mm"},
                         {"From previous", "mm"},
                         {"Direction", "", false},
                         {"Angle", "\u00b0"},
                         {"Inside radius drawn", "mm"},
                         {"Inside radius achieved", "mm"},
                         {"Bend allowance (mechanics)", "mm"},
                         {"Bend allowance (DIN 6935)", "mm"},
                         {"Bend allowance (handbook)", "mm"}},
                        {},
                        "The developed length is the sum of flats and bend allowances. Up and down apply "
                        "with the blank's left end on the left and its upper face up."};
    double last = 0.0;
    for (const job::FlatBend& b : pattern.bends) {
        const files::Bend& bend = c.part.bends[b.bend];
        table.rows.push_back({bend.name, figure(b.at, 2), figure(b.at - last, 2),
                              bend.angle > 0.0 ? "up" : "down", figure(std::abs(bend.angle) / degree, 1),
                              figure(bend.inside_radius, 2), figure(b.made_radius, 2), figure(b.mechanics, 3),
                              figure(b.din, 3), figure(b.handbook, 3)});
        last = b.at;
    }
    table.rows.push_back({"right end", figure(pattern.blank.length, 2),
                          figure(pattern.blank.length - last, 2), "", "", "", "", "", "", ""});
    return table;
}

report::Table cutouts_table(const files::Case& c, const job::FlatPattern& pattern) {
    report::Table table{"Cut-outs",
                        {{"Cut-out", "", false},
                         {"At", "mm"},
                         {"Across", "mm"},
                         {"Size", "mm"},
                         {"To the bend", "mm"},
                         {"Minimum by rule", "mm"},
                         {"Nearest bend", "", false}},
                        {}};
    for (std::size_t i = 0; i < pattern.cutouts.size(); ++i) {
        const files::Cutout& cut = c.cutouts[i];
        const job::FlatCutout& flat = pattern.cutouts[i];
        const bool round = cut.length == cut.width;
        table.rows.push_back(
            {std::to_string(i + 1) + (round ? ", hole" : ", slot"), figure(cut.at, 2), figure(cut.across, 2),
             round ? figure(cut.width, 1) : figure(cut.length, 1) + " \u00d7 " + figure(cut.width, 1),
             figure(flat.edge_to_bend, 2), figure(flat.least, 2),
             c.part.bends[flat.bend].name + (flat.too_near() ? ": too close" : "")});
    }
    return table;
}

}  // namespace

void add_part(const files::Case& c, const job::JobResult& job, report::Page& page) {
    const picture::DrawingList list = picture::draw_profile(profile_sheet(c, job), drawing_height);
    const std::string off = figure(job.profile.worst_on_flats.off, 2),
                      in_bends = figure(job.profile.worst_in_bends.off, 2);
    page.part = {report::inline_svg(list, "The finished profile laid over the drawing; at most " + off +
                                              " mm deviation on the flats, " + in_bends + " mm in the bends"),
                 "The finished strip's mid-line (dark) over the drawn part (light). Spikes are deviations, "
                 "drawn larger by the factor in the picture."};
    page.part_words = {"The finished profile is at most " + off + " mm off the drawing on its flats and " +
                       in_bends + " mm in its bends, where an air-bent radius differs from the drawn one."};
    report::Table table{
        "Finished angles",
        {{"Bend", "", false}, {"Drawing", "\u00b0"}, {"Finished", "\u00b0"}, {"Difference", "\u00b0"}},
        {},
        words("Tolerance: \u00b1%g\u00b0. ", c.part.angle_tolerance / degree) +
            "Bend angles: 0 is flat; minus is down."};
    for (std::size_t b = 0; b < job.finished_angle.size(); ++b) {
        const double drawn = c.part.bends[b].angle / degree, made = job.finished_angle[b] / degree;
        table.rows.push_back(
            {c.part.bends[b].name, figure(drawn, 1), figure(made, 2), figure(made - drawn, 2)});
    }
    page.part_tables = {table};
}

void add_blank(const files::Case& c, const job::FlatPattern& pattern, report::Page& page) {
    picture::FlatSheet sheet = pattern_sheet(c, pattern);
    const bool given = !c.bend_lines.empty();
    sheet.remark = given ? "Bend lines given in the case." : "Bend lines by DIN 6935.";
    page.blank = {report::inline_svg(picture::draw_flat(sheet, drawing_height),
                                     "Flat pattern with bend lines and their distances from the left end; "
                                     "the table below has the same figures"),
                  "Flat pattern to scale. Dash-dot: bend lines; tinted: bend allowances."};
    page.blank_words = {
        words("The blank is %.2f mm long and %g mm wide", pattern.blank.length, c.width) +
        (pattern.mass_g > 0.0 ? words(", %.1f g. ", pattern.mass_g) : ". ") +
        (given ? "Its bend lines are given in the case. " : "Its bend lines are calculated by DIN 6935. ") +
        words("The developed length is %.2f mm by the mechanics, %.2f mm by DIN 6935 and %.2f mm by the "
              "handbook rule; the command blank gives the bend lines that match the drawing's legs exactly.",
              pattern.mechanics, pattern.din, pattern.handbook)};
    std::string short_legs;
    const std::vector<double>& flats = c.part.flats;
    const std::vector<double> legs =
        job::legs_missing(c, pattern.blank, pattern.job.steps.back().stroke.free);
    for (int i = 0; i < static_cast<int>(flats.size()); ++i)
        if (std::abs(legs[i]) >= 0.05)
            short_legs += (short_legs.empty() ? "" : "; ") + missing(c, i, legs[i]);
    page.blank_words.push_back(short_legs.empty() ? "Every leg is within 0.05 mm of the drawing."
                                                  : "Leg length error: " + short_legs + ".");
    page.blank_tables = {bends_table(c, pattern)};
    if (!pattern.cutouts.empty()) page.blank_tables.push_back(cutouts_table(c, pattern));
}

}  // namespace overbend::documents
