#include "render/report/sheet.h"

#include "render/picture/cautions.h"
#include "render/picture/text_width.h"
#include "render/report/sheet_pages.h"
#include "sim/errors.h"
#include "sim/units.h"

namespace overbend::report {

namespace {

void check(const picture::ShownJob& job) {
    picture::check_strokes(job, "sheets");
    const picture::ShownPart& part = job.part;
    if (job.bends.empty() || part.flats.size() != job.bends.size() + 1 ||
        part.flat_middle.size() != part.flats.size() || part.bend_middle.size() != job.bends.size() ||
        part.line.size() < 2)
        throw OutOfRange(
            "part on sheets",
            std::to_string(job.bends.size()) + " bends, " + std::to_string(part.flats.size()) + " flats",
            "give at least one bend, one more flat than bends, and a place on the profile for each");
}

}  // namespace

std::vector<picture::DrawingList> draw_sheets(const picture::ShownJob& job) {
    check(job);
    Paper paper;
    paper.title = job.title + ": sheets for the shop";
    paper.foot = picture::sheet_cautions();
    add_overview(paper, job);
    for (int i = 0; i < static_cast<int>(job.strokes.size()); ++i) add_stroke(paper, job, i);
    return finished(std::move(paper));
}

}  // namespace overbend::report
