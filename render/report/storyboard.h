// The whole job on one picture: for each stroke the strip before it, pressed and free, with how it is turned
// to get there. For a slide (16 to 9) or for A4 paper upright, where many strokes take several pages.
//
// The smallest words are 1/60 of the picture's height. Panels of a stroke are to one scale; where the strip
// would be thinner than the eye takes for coloured, it is drawn dark.
// Units  picture pixels.

#pragma once

#include <vector>

#include "render/picture/shown_job.h"

namespace overbend::report {

// height: of a slide, 540 to 2160 px; a page of A4 is 1123 px high and takes none. A slide holds up to 18
// strokes, a page of A4 up to 6; more begin another one.
// Throws OutOfRange: no stroke, one without a recording; the height.
std::vector<picture::DrawingList> draw_slides(const picture::ShownJob& job, int height, picture::Theme theme);
std::vector<picture::DrawingList> draw_story_pages(const picture::ShownJob& job, picture::Theme theme);

}  // namespace overbend::report
