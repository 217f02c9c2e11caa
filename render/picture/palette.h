// Colours: published sets that colour-blind people can tell apart, and that stay in order in greyscale.
//
// Source  things: M. Okabe and K. Ito, Color Universal Design: How to make figures and presentations that are
//         friendly to colorblind people, 2008. Stress: five control points on either side of the scheme `vik`
//         of F. Crameri, Scientific colour maps, doi:10.5281/zenodo.1243862. The control points are from
//         memory, rounded to 8 bits, and the scheme's two darkest ends are left out so that a black outline
//         still shows on them; between them colours are blended in CIELAB and spaced evenly by their
//         difference there, so that equal steps of stress look equally large.

#pragma once

#include <string>

#include "render/picture/drawing_list.h"
#include "sim/tool/tool_set.h"

namespace overbend::picture {

namespace okabe_ito {
constexpr Colour black{0.0, 0.0, 0.0, 1.0};
constexpr Colour orange{230 / 255.0, 159 / 255.0, 0.0, 1.0};
constexpr Colour sky_blue{86 / 255.0, 180 / 255.0, 233 / 255.0, 1.0};
constexpr Colour bluish_green{0.0, 158 / 255.0, 115 / 255.0, 1.0};
constexpr Colour yellow{240 / 255.0, 228 / 255.0, 66 / 255.0, 1.0};
constexpr Colour blue{0.0, 114 / 255.0, 178 / 255.0, 1.0};
constexpr Colour vermillion{213 / 255.0, 94 / 255.0, 0.0, 1.0};
constexpr Colour reddish_purple{204 / 255.0, 121 / 255.0, 167 / 255.0, 1.0};
}  // namespace okabe_ito

enum class Theme { light, dark };

// What is behind everything: the theme's page, or nothing, for a picture that is laid on something else. The
// theme is then to be that of what it is laid on.
enum class Backdrop { page, transparent };

// What everything on a picture is painted with.
struct ThemeColours {
    Colour page;       // behind everything
    Colour stage;      // behind strip and tools
    Colour panel;      // behind readouts
    Colour rule;       // fine lines
    Colour ink;        // words and what is now
    Colour muted;      // words of less weight
    Colour outline;    // of the strip
    Colour loaded;     // what was under load
    Colour alarm;      // an interference
    Colour alarm_ink;  // words on a patch of `alarm`
    Colour accent;     // the step's number
    Colour accent_ink;
    Colour alarm_words;  // `alarm` in words, which have to stand out more than a mark
};
const ThemeColours& theme_colours(Theme theme);

// How one kind of tool is painted: each has a tint and a direction of hatching of its own.
struct ToolColours {
    Colour fill;
    Colour hatch;
    Colour outline;
    double hatch_direction = 0.0;  // rad, as seen on the picture, y down
};
ToolColours tool_colours(tool::Role role, Theme theme);

// value from -1 (blue) through 0 (near white) to 1 (red brown); outside it is held at the end.
Colour diverging(double value);
// value from 0 (near white) to 1 (red brown): the upper half of the same map.
Colour sequential(double value);

// Of the neutral line, which lies on the strip's colours whatever the theme.
Colour neutral_line_colour();

Colour with_opacity(Colour colour, double opacity);
Colour mixed(const Colour& a, const Colour& b, double part_of_b);
std::string hex(const Colour& colour);  // "#0072b2"

// CIELAB: lightness 0 to 100, green to red, blue to yellow. A distance of 2 is just seen.
Eigen::Vector3d to_lab(const Colour& colour);

// CIE relative luminance (0 black, 1 white) and lightness L* (0 to 100), which greyscale leaves of a colour.
double luminance(const Colour& colour);
double lightness(const Colour& colour);

}  // namespace overbend::picture
