// The buttons and keys that play a film.

#pragma once

#include "render/ui/ui.h"
#include "scenes/window/job/play_head.h"

namespace overbend::window {

enum class Went { nowhere_else, to_an_interference };

Went draw_play_controls(ui::Ui& ui, PlayHead& head, const Playback& playback);

}  // namespace overbend::window
