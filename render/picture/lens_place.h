// Where the magnifier stands: off the strip in every state, off the working zone with its angles, and on as
// little of the tools as can be.

#pragma once

#include "render/picture/view.h"

namespace overbend::picture {

// The largest of some sizes for which there is room, 9 to 15 units high. None: no room, or the stage shows
// the strip so large that a magnifier would add nothing (less than one and a half times).
std::optional<LensPlace> place_lens(const stroke::Recording& recording, const View& view,
                                    const Layout& layout, const std::vector<double>& bend_lines);

// What the magnifier shows: a view whose stage is the box, the looked-at place of the strip in its middle.
View lens_view(const LensPlace& lens, const View& stage, const Place& looked_at);

}  // namespace overbend::picture
