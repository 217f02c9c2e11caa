// How wide words are in DejaVu Sans, so that a picture can be laid out before anything is painted.
//
// Source  advance widths of DejaVu Sans and DejaVu Sans Bold 2.37, read from the fonts in assets/fonts. A
//         letter that is not in the table counts as wide as a capital M.

#pragma once

#include <string>
#include <vector>

#include "render/picture/drawing_list.h"
#include "render/picture/numbers.h"

namespace overbend::picture {

double text_width(const std::string& words, double size, Weight weight = Weight::normal);  // pixels

// The box that a text fills: from the font's ascent to its descent, and as wide as its words.
Rect text_box(const Text& text);

// The words, cut at their end and closed with an ellipsis where they are wider than `width` pixels.
std::string fitted(const std::string& words, double size, double width, Weight weight = Weight::normal);

// Broken at blanks into at most `lines` lines; what does not fit is cut with an ellipsis. First and later
// lines may have different room.
std::vector<std::string> wrapped(const std::string& words, double size, double first_width, double width,
                                 int lines);

}  // namespace overbend::picture
