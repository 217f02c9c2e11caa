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
                       in_bends + " mm in its bends."};
    page.part_tables = {page_table(finished_table(c, job))};
}

void add_blank(const files::Case& c, const job::FlatPattern& pattern, report::Page& page) {
    const picture::FlatSheet sheet = pattern_sheet(c, pattern);
    page.blank = {report::inline_svg(picture::draw_flat(sheet, drawing_height),
                                     "Flat pattern with bend lines and their distances from the left end; "
                                     "the table below has the same figures"),
                  "Flat pattern to scale. Dash-dot: bend lines; tinted: bend allowances."};
    page.blank_words = {words("The blank is %.2f mm long and %g mm wide", pattern.blank.length, c.width) +
                        (pattern.mass_g > 0.0 ? words(", %.1f g. ", pattern.mass_g) : ". ") +
                        how_found(pattern)};
    std::string legs;
    for (const job::MeasuredSize& m : pattern.job.measures)
        if (m.what == job::SizeKind::leg)
            legs += (legs.empty() ? "Legs, finished less drawn: " : ", ") + words("%+.2f", m.off());
    if (!legs.empty()) page.blank_words.push_back(legs + " mm.");
    page.blank_tables = {page_table(bend_lines_table(c, pattern)), page_table(lengths_table(pattern))};
    if (!pattern.cutouts.empty()) page.blank_tables.push_back(page_table(cutouts_table(c, pattern)));
}

}  // namespace overbend::documents
