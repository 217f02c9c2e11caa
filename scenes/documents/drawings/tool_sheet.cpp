#include "scenes/documents/drawings/tool_sheet.h"

#include <algorithm>
#include <cmath>

#include "render/drawing/measurer.h"
#include "scenes/files/case/tool_outline.h"

namespace overbend::documents {

namespace {

using tool::Piece;

// Of an outline with more radii than that, the drawing shows no more: its contour is its DXF file.
constexpr std::size_t most_radii = 12;

drawing::Dimension radius_of(const Piece& arc, int count, drawing::Tolerances tolerances) {
    drawing::Dimension d;
    d.measure = drawing::Measure::radius;
    d.centre = arc.centre;
    d.radius = arc.radius;
    const tool::Vec2 first = (arc.sweep > 0.0 ? arc.start : arc.end) - arc.centre;
    d.start = std::atan2(first.y(), first.x());
    d.sweep = std::abs(arc.sweep);
    d.convex = arc.sweep > 0.0;  // an outline runs counter-clockwise
    d.words = radius_words(arc.radius, count, tolerances);
    return d;
}

bool same_radius(const Piece& a, const Piece& b) {
    return (a.sweep > 0.0) == (b.sweep > 0.0) && std::abs(a.radius - b.radius) < 5e-4;
}

// Every radius once, where it stands furthest right.
void add_radii(drawing::DrawingSheet& sheet, const std::vector<Piece>& pieces,
               drawing::Tolerances tolerances) {
    std::vector<const Piece*> first;
    std::vector<int> count;
    for (const Piece& piece : pieces) {
        if (!piece.is_arc()) continue;
        const auto same = std::find_if(first.begin(), first.end(),
                                       [&](const Piece* other) { return same_radius(*other, piece); });
        if (same == first.end()) {
            first.push_back(&piece);
            count.push_back(1);
            continue;
        }
        ++count[same - first.begin()];
        if (piece.centre.x() > (*same)->centre.x() + 1e-9) *same = &piece;
    }
    for (std::size_t i = 0; i < std::min(first.size(), most_radii); ++i)
        sheet.dimensions.push_back(radius_of(*first[i], count[i], tolerances));
}

}  // namespace

drawing::DrawingSheet tool_sheet(const files::Tool& tool, drawing::Tolerances tolerances) {
    drawing::DrawingSheet sheet;
    sheet.name = tool.name + ": " + kind_name(tool) + ", section";
    sheet.tolerances = tolerances_words(tolerances);
    const tool::ArcOutline outline = files::tool_outline(tool, 1);
    sheet.outlines = {outline.pieces()};
    const drawing::Measurer measurer{sheet, outline.box(), tolerances};
    files::kind_of(tool.shape).measure(measurer, tool.shape);
    add_radii(sheet, outline.pieces(), tolerances);
    return sheet;
}

}  // namespace overbend::documents
