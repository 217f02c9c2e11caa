// The flat pattern as a drawing: outline, bend lines, cut-outs, dimensions from the left end, to scale.
//
// Bend lines are dash-dot lines, each with a flag above (name, angle, up or down, inside radius) and its
// distance from the left end below; bend allowances are tinted. Flags that would overlap stand
// in steps, the leftmost highest: a flag lies over its neighbours' lines only where those have ended.
//
// Units  mm, rad; the picture in pixels.

#pragma once

#include <string>
#include <vector>

#include "render/picture/drawing_list.h"

namespace overbend::picture {

struct FlatBendLine {
    std::string name;
    double at = 0.0;             // mm from the left end, 0 < at < length, rising
    double half_width = 0.0;     // of the bend allowance, mm on either side
    double angle = 0.0;          // rad, positive bends up
    double inside_radius = 0.0;  // mm, of the drawing
};

struct FlatHole {
    double at = 0.0, across = 0.0;     // its middle, mm from the left end and from the lower edge
    double width = 0.0, length = 0.0;  // mm; equal for a hole
    bool too_near = false;             // to a bend
};

struct FlatSheet {
    std::string title;
    std::string material;  // one line: metal, thickness
    std::string remark;    // one line: how the lines were found
    double length = 0.0;   // mm, > 0
    double width = 0.0;    // mm, > 0
    double mass_g = 0.0;   // 0: not given
    std::vector<FlatBendLine> bends;
    std::vector<FlatHole> holes;
    std::vector<std::string> cautions;
};

// height: of the picture, pixels, 400 to 4000. It is as wide as a sheet of paper lying on its side (ISO 216),
// wider when the flags need it. The smallest words are 1/45 of the height. Throws OutOfRange: the height; a
// sheet without length or width; labels that do not fit on any picture.
DrawingList draw_flat(const FlatSheet& sheet, int height);

}  // namespace overbend::picture
