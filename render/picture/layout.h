// Where things stand on a picture: head, stage, panel of readouts, caption.
//
// A wide picture has the panel to the right of the stage, a tall one below it. All sizes are parts of the
// picture's height, so that a picture looks the same at any size.
// Units  picture pixels.

#pragma once

#include "render/picture/drawing_list.h"

namespace overbend::picture {

struct PictureSize {
    int width = 1280;  // 320 to 3840, at least 9/16 of the height
    int height = 720;  // 180 to 2160
};

// Throws OutOfRange, with the figures.
void check_size(const PictureSize& size);

// The panel of readouts and the force curve; hidden, the stage has the whole width.
enum class Charts { shown, hidden };

struct Layout {
    double unit = 0.0;  // size of the smallest words: 1/42 of the height (1/45 is the least allowed)
    double line = 0.0;  // width of a fine line
    Rect head, stage, panel, caption;
    Rect press, bends;   // within the panel: readouts of the press, of the bends
    Rect curve, legend;  // the same; the curve is empty where there is no room; without a panel the legend
                         // lies on the stage
    int caption_lines = 1;
    bool narrow = false;  // less room than names and angles need side by side: both are kept short
};

// Width in units from which on the legend on the stage has room for the elastic layers.
constexpr double legend_with_elastic = 45.0;

Layout lay_out(const PictureSize& size, Charts charts = Charts::shown);

}  // namespace overbend::picture
