// Colours, sizes and letters of the controls, those of the pictures' themes.

#pragma once

#include "render/picture/palette.h"

namespace overbend::ui {

void set_colours(picture::Theme theme);

// Loads the pictures' font at so many pixels, and sizes of controls to suit. Once, after ImGui has its
// context. Throws std::runtime_error: a missing font.
void set_sizes(double letter_px);

}  // namespace overbend::ui
