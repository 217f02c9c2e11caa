#include "scenes/files/case/kinds.h"

#include <cmath>

#include "render/drawing/measurer.h"
#include "scenes/files/case/usual_sizes.h"
#include "scenes/files/dxf/chain.h"
#include "sim/words.h"

namespace overbend::files {

using drawing::Beside;
using tool::Vec2;

namespace {

// The ends of its lines and arcs.
std::vector<tool::PathPoint> points_of(const tool::ArcOutline& outline) {
    std::vector<tool::PathPoint> points;
    for (const tool::Piece& piece : outline.pieces())
        points.push_back({piece.start, 0.0, piece.is_arc() ? std::tan(0.25 * piece.sweep) : 0.0});
    return points;
}

}  // namespace

void describe(Fields& f, tool::PathPoint& t) {
    f.number({"x_mm", "10.0", "To the right of the tool's axis"}, coordinate, t.at.x());
    f.number({"y_mm", "20.0", "Height"}, coordinate, t.at.y());
    f.number_or({"radius_mm", "2.0", "Radius that rounds the corner"}, size_or_none, t.radius, {0.0});
    f.number_or({"bulge", "0.4142",
                 "Tangent of a quarter of the turn of the arc to the next point, counter-clockwise"},
                from_to(-1000.0, 1000.0), t.bulge, {0.0});
}

// ---- outline

void describe(Fields& f, OutlineTool& t) {
    std::vector<tool::PathPoint> points = t.points;
    if (points.empty() && !t.file) points = points_of(t.outline);
    f.tables_if({"points",
                 "[ { x_mm = -10.0, y_mm = 0.0 }, { x_mm = 10.0, y_mm = 0.0 }, { x_mm = 0.0, y_mm = 20.0 } ]",
                 "Its corners, three or more; or give a file"},
                points);
    t.points = points;
    OutlineFile file = t.file.value_or(OutlineFile{"", "", usual_gap});
    f.text_or({"file", "\"punch.dxf\"", "A DXF drawing in mm whose lines make one closed outline"}, file.path,
              "");
    f.text_or({"layer", "\"CONTOUR\"", "Layer of the drawing"}, file.layer, "", "all");
    f.number_or({"gap_mm", "0.02", "Gaps up to this size are closed"}, from_to(0.0, 1.0), file.gap,
                {usual_gap});
    std::vector<double> origin;
    if (!file.origin.isZero(0.0)) origin = {file.origin.x(), file.origin.y()};
    f.numbers_if({"origin_mm", "[120.0, 80.0]", "The tool's origin in the drawing"},
                 from_to(-largest_coordinate, largest_coordinate), 2, origin, "[0, 0]");
    file.origin = origin.empty() ? tool::Vec2(0.0, 0.0) : tool::Vec2(origin[0], origin[1]);
    f.number_or({"turn_deg", "90.0", "Rotation about the origin, counter-clockwise"}, from_to(-360.0, 360.0),
                file.turn, {0.0});
    t.file.reset();
    if (!file.path.empty()) t.file = file;
}

std::string figures(const OutlineTool& t) {
    const tool::Box& box = t.outline.box();
    return words("custom outline, %.4g mm wide and %.4g mm high", box.high.x() - box.low.x(),
                 box.high.y() - box.low.y());
}

void measure(const drawing::Measurer& m, const OutlineTool& t) {
    m.size(Beside::below);
    m.note(std::string("The outline comes from ") + (t.file ? "its" : "the") +
           " DXF file; only its overall dimensions and radii are given here.");
}

Kind outline_tool() {
    return kind<OutlineTool>("outline", Stands::punch_or_die, Work::any, describe, figures, measure,
                             [](const OutlineTool& t, int) { return t.outline; });
}

}  // namespace overbend::files
