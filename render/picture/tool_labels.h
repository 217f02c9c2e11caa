// Places the tools' names: on the tool itself where possible, else beside it, and never where the
// strip comes during the stroke.

#pragma once

#include "render/picture/view.h"

namespace overbend::picture {

std::vector<ToolLabel> place_labels(const stroke::Recording& recording, const View& view,
                                    const Layout& layout);

// The same for a picture of one state alone, without scale and key, with the ram's tools at a travel (mm); of
// some tools alone. Names keep clear of the strip as it is there.
struct LabelledState {
    const stroke::State& state;
    double travel;
    std::vector<int> tools;  // indices into Recording::tools
};
std::vector<ToolLabel> place_labels(const stroke::Recording& recording, const View& view,
                                    const Layout& layout, const LabelledState& seen);

// The point of a closed outline that is nearest to p. Picture pixels.
Point nearest_on(const std::vector<Point>& closed, const Point& p);

}  // namespace overbend::picture
