// The part and its blank on a job's page.

#include "render/report/inline_svg.h"
#include "scenes/documents/report/page_parts.h"
#include "scenes/documents/report/part_sheets.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

constexpr int drawing_height = 640;  // px

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
    page.part_tables = {page_table(finished_table(c, job))};
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
        "The command blank gives the bend lines that match the drawing's legs exactly."};
    std::string legs;
    for (const Finding& f : pattern.job.findings)
        if (f.rule == Rule::finished_leg) legs += (legs.empty() ? "" : "; ") + job::finding_words(c, f);
    page.blank_words.push_back(legs.empty() ? "Every leg is within 0.05 mm of the drawing."
                                            : "Leg length error: " + legs + ".");
    page.blank_tables = {page_table(bend_lines_table(c, pattern)), page_table(lengths_table(pattern))};
    if (!pattern.cutouts.empty()) page.blank_tables.push_back(page_table(cutouts_table(c, pattern)));
}

}  // namespace overbend::documents
