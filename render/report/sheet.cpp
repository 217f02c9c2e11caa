#include "render/report/sheet.h"

#include "render/picture/strip_shape.h"
#include "render/picture/text_width.h"
#include "render/report/sheet_pages.h"
#include "sim/errors.h"
#include "sim/units.h"

namespace overbend::report {

namespace {

void check(const SheetData& data) {
    if (data.strokes.empty()) throw OutOfRange("strokes on sheets", "0", "give at least one");
    if (data.bends.empty() || data.flats.size() != data.bends.size() + 1 ||
        data.flat_middle.size() != data.flats.size() || data.bend_middle.size() != data.bends.size() ||
        data.profile.size() < 2)
        throw OutOfRange(
            "part on sheets",
            std::to_string(data.bends.size()) + " bends, " + std::to_string(data.flats.size()) + " flats",
            "give at least one bend, one more flat than bends, and a place on the profile for each");
    for (const SheetStroke& stroke : data.strokes) {
        if (stroke.recording == nullptr)
            throw OutOfRange("recording of stroke '" + stroke.name + "'", "none", "give one with states");
        picture::check_recording(*stroke.recording);
    }
}

}  // namespace

std::string in_degrees(double angle) {
    return picture::fixed(angle / degree, 1) + "\u00b0";
}

std::vector<picture::DrawingList> draw_sheets(const SheetData& data) {
    check(data);
    Paper paper;
    paper.title = data.title + ": sheets for the shop";
    paper.foot = data.cautions;
    add_overview(paper, data);
    for (int i = 0; i < static_cast<int>(data.strokes.size()); ++i) add_stroke(paper, data, i);
    return finished(std::move(paper));
}

}  // namespace overbend::report
