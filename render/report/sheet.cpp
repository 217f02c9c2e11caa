#include "render/report/sheet.h"

#include "render/picture/cautions.h"
#include "render/report/sheet_pages.h"
#include "sim/errors.h"

namespace overbend::report {

using namespace picture;

namespace {

void check(const ShownJob& job) {
    check_strokes(job, "sheets");
    const ShownPart& part = job.part;
    if (job.bends.empty() || part.flats.size() != job.bends.size() + 1 ||
        part.flat_middle.size() != part.flats.size() || part.bend_middle.size() != job.bends.size() ||
        part.line.size() < 2)
        throw OutOfRange(
            "part on sheets",
            std::to_string(job.bends.size()) + " bends, " + std::to_string(part.flats.size()) + " flats",
            "give at least one bend, one more flat than bends, and a place on the profile for each");
}

}  // namespace

std::vector<DrawingList> draw_sheets(const ShownJob& job) {
    check(job);
    Paper paper;
    paper.title = job.title + ": sheets for the shop";
    paper.foot = sheet_cautions();
    add_overview(paper, job);
    for (int i = 0; i < static_cast<int>(job.strokes.size()); ++i) add_stroke(paper, job, i);
    return finished(std::move(paper));
}

}  // namespace overbend::report
