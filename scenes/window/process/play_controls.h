// The buttons and keys that play a film.

#pragma once

#include "render/window/ui.h"
#include "scenes/window/job/play_head.h"

namespace overbend::scenes {

enum class Went { nowhere_else, to_an_interference };

Went draw_play_controls(render::Ui& ui, PlayHead& head, const Reel& reel);

}  // namespace overbend::scenes
