// The finished profile laid over the drawing's, with its deviations drawn large.
//
// The drawing is a light band as thick as the strip, the finished strip's mid-line a dark line on it. Between
// them stand spikes from the places that were compared: the deviation, enlarged as the picture says.
//
// Units  mm, y up; the picture in pixels.

#pragma once

#include <string>
#include <vector>

#include "render/picture/drawing_list.h"

namespace overbend::picture {

struct ProfilePlace {
    Point drawn = Point::Zero();  // mm
    Point made = Point::Zero();
    std::string name;    // where that is, for words: "bend 'hook'", "flat 3"
    bool worst = false;  // circled, and told with its figure
};

struct ProfileSheet {
    std::string title;
    std::string remark;              // one line
    double thickness = 0.0;          // mm, > 0
    std::vector<Point> drawn, made;  // mid-lines, two points at least
    std::vector<ProfilePlace> places;
};

// height: of the picture, pixels, 400 to 4000; it is as wide as a sheet of paper lying on its side. Throws
// OutOfRange: the height; a profile without length.
DrawingList draw_profile(const ProfileSheet& sheet, int height);

}  // namespace overbend::picture
