// The whole job as a bar: a segment a stroke with its name, narrower ones between, marks where the strip
// meets what it should not, and where the film is. Pointed at with the mouse held, the film is there.

#pragma once

#include <optional>

#include "render/picture/palette.h"
#include "render/ui/ui.h"
#include "scenes/window/job/play_head.h"

namespace overbend::window {

// Over the whole width that is left. Returns the frame that is pointed at.
std::optional<double> draw_time_bar(ui::Ui& ui, const Playback& playback, const PlayHead& head,
                                    picture::Theme theme);
// px
double time_bar_height();

}  // namespace overbend::window
