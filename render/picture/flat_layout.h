// Where everything stands on the drawing of a flat pattern. For flat_drawing.cpp.
//
// Units  mm for what is drawn, pixels for where.

#pragma once

#include <string>
#include <vector>

#include "render/picture/flat_drawing.h"

namespace overbend::picture {

// A flag at a place along a line, in px; in steps, so that none covers another or another's pole.
struct Flag {
    double at = 0.0;     // of its pole, rising from flag to flag
    double width = 0.0;  // it lies to the right of its pole
    int step = 0;        // how high its pole is: 0 is the lowest
};

// From the right: a flag stands one step above the highest of those whose poles it would lie over.
// Returns the number of steps; gap: the least distance from a flag's end to the next pole.
int set_steps(std::vector<Flag>& flags, double gap);

// A flag's words, one or two lines, and what it stands for.
struct FlatLabel {
    double at = 0.0;  // mm
    std::vector<std::string> lines;
    Colour colour;
    double from_lower_edge = 0.0;  // mm, where its pole begins; for flags below
};

struct FlatLayout {
    const FlatSheet* given = nullptr;
    double unit = 0.0;  // the smallest words
    int width = 0, height = 0;
    std::vector<FlatLabel> above, below;
    int lines_above = 3, lines_below = 2;  // of a flag; 1 where many are stacked
    std::vector<Flag> flags_above, flags_below;
    double scale = 0.0;  // pixels a mm
    Rect blank;
    double foot = 0.0;               // where the drawing with its dimensions ends
    double bottom = 0.0;             // where scale bar and cautions begin
    std::vector<std::string> words;  // the cautions, wrapped
    double margin() const { return 1.5 * unit; }
    double line() const { return 1.35 * unit; }
    double x(double mm) const { return blank.x + scale * mm; }
    double y(double mm) const { return blank.bottom() - scale * mm; }
};

// Colours of a bend line by its sense, and of what is wrong: the published ones, darkened so that words in
// them have 4.5 times the contrast of white paper.
Colour bend_colour(const FlatBendLine& bend);
Colour alarm_colour();
const Colour& flat_ink();

// Positions of all labels at this height. Throws OutOfRange: they do not fit.
FlatLayout lay_out_flat(const FlatSheet& sheet, int height);

}  // namespace overbend::picture
