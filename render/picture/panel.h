// A small picture of one instant of a stroke, for a part of a larger one: tools in section and the strip,
// with few words. Several panels of a stroke are to one scale.
//
//   View view = choose_panel_view(recording, {0.0, 23.0}, box, unit);
//   add_panel(list, recording, 23.0, info, view);
//
// Units  mm in the press; picture pixels.

#pragma once

#include <optional>
#include <vector>

#include "render/picture/drawing_list.h"
#include "render/picture/palette.h"
#include "render/picture/stage.h"
#include "render/picture/view.h"

namespace overbend::picture {

enum class StripPaint {
    layers,  // by hoop stress
    plain    // dark, for a printer without colours
};
enum class ToolWords {
    hidden,
    of_those_that_press,  // "punch", "die", "pad", "clamp" on the tools
    all                   // "ram", "holder" ... too
};

struct PanelInfo {
    double unit = 0.0;  // size of the smallest words, px, > 0
    Theme theme = Theme::light;
    StripPaint paint = StripPaint::layers;
    double colour_limit = 0.0;           // MPa; 0: found from the recording
    std::optional<double> ghost;         // another instant, whose strip is a dashed outline
    std::optional<double> punch_travel;  // where the ram's tools are; left out: where the state has them
    ToolWords words = ToolWords::all;
    std::vector<InterferenceMark> interferences;  // those that are there at the instant
};

// The whole strip at these instants, with the tools' working zone, as large as the box takes it.
// Throws OutOfRange: no instant, or one that is not in the recording.
View choose_panel_view(const stroke::Recording& recording, const std::vector<double>& instants,
                       const Rect& box, double unit);

// A view of the same place at this scale in another box.
View moved_view(View view, const Rect& box);

// Fills the view's stage; names find their places by what is seen at the instant. Throws as draw_stage.
void add_panel(DrawingList& list, const stroke::Recording& recording, double instant, const PanelInfo& info,
               const View& view);

// How far above its first touch the punch is drawn before the stroke, so that its nose is seen. mm
double panel_raise(const stroke::Recording& recording, const View& view);

}  // namespace overbend::picture
