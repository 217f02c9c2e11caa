// The screen that a window would be on.

#pragma once

#include <optional>
#include <string>

namespace overbend::render {

// Why no window can be opened here, in words; nothing when one can.
std::optional<std::string> no_display();

// How much larger than on an ordinary screen (96 dots an inch) words and lines should be: what the
// environment variable OVERBEND_SCALE says, or else the resource Xft.dpi of the display over 96; 1 without
// either. Between 0.5 and 4.
double display_scale();

}  // namespace overbend::render
