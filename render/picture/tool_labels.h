// Finds room for the tools' names: on the tool itself where it can be, else beside it, and never where the
// strip comes during the stroke.

#pragma once

#include "render/picture/view.h"

namespace overbend::render {

std::vector<ToolLabel> place_labels(const stroke::Recording& recording, const View& view,
                                    const Layout& layout);

// The point of a closed outline that is nearest to p. Picture pixels.
Point nearest_on(const std::vector<Point>& closed, const Point& p);

}  // namespace overbend::render
