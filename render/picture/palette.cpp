#include "render/picture/palette.h"

#include <array>
#include <cmath>

#include "sim/words.h"

namespace overbend::picture {

namespace {

using Lab = Eigen::Vector3d;  // CIELAB: lightness, green to red, blue to yellow

constexpr Colour bytes(int red, int green, int blue) {
    return {red / 255.0, green / 255.0, blue / 255.0, 1.0};
}

// sRGB and CIELAB after IEC 61966-2-1 and CIE 15, white D65.
double to_linear(double c) {
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}
double from_linear(double c) {
    return c <= 0.0031308 ? 12.92 * c : 1.055 * std::pow(c, 1.0 / 2.4) - 0.055;
}

constexpr double white_x = 0.95047;
constexpr double white_z = 1.08883;
constexpr double knee = 6.0 / 29.0;

double compress(double t) {
    return t > knee * knee * knee ? std::cbrt(t) : t / (3.0 * knee * knee) + 4.0 / 29.0;
}
double expand(double t) {
    return t > knee ? t * t * t : 3.0 * knee * knee * (t - 4.0 / 29.0);
}

Colour from_lab(const Lab& lab) {
    const double y_root = (lab(0) + 16.0) / 116.0;
    const double x = white_x * expand(y_root + lab(1) / 500.0);
    const double y = expand(y_root);
    const double z = white_z * expand(y_root - lab(2) / 200.0);
    const auto channel = [](double c) { return from_linear(std::min(1.0, std::max(0.0, c))); };
    return {channel(3.2404542 * x - 1.5371385 * y - 0.4985314 * z),
            channel(-0.9692660 * x + 1.8760108 * y + 0.0415560 * z),
            channel(0.0556434 * x - 0.2040259 * y + 1.0572252 * z), 1.0};
}

constexpr int steps = 256;
using HalfMap = std::array<Colour, steps + 1>;

// Blends the control points in CIELAB and spaces the result evenly by the difference of colour.
HalfMap spaced_evenly(const std::array<Colour, 5>& control) {
    constexpr int fine = 400;  // points a blend; their chord is a good measure of the way between
    std::array<Lab, 4 * fine + 1> at;
    std::array<double, 4 * fine + 1> way{};
    for (int i = 0; i <= 4 * fine; ++i) {
        const int k = std::min(i / fine, 3);
        const double w = static_cast<double>(i - k * fine) / fine;
        at[i] = (1.0 - w) * to_lab(control[k]) + w * to_lab(control[k + 1]);
        if (i > 0) way[i] = way[i - 1] + (at[i] - at[i - 1]).norm();
    }
    HalfMap map;
    int i = 0;
    for (int s = 0; s <= steps; ++s) {
        const double wanted = way.back() * s / steps;
        while (i < 4 * fine && way[i] < wanted) ++i;
        map[s] = from_lab(at[i]);
    }
    return map;
}

const HalfMap& half_map(bool upper) {
    static const HalfMap below =
        spaced_evenly({bytes(235, 229, 224), bytes(201, 221, 231), bytes(113, 168, 196), bytes(30, 111, 157),
                       bytes(3, 62, 125)});
    static const HalfMap above =
        spaced_evenly({bytes(235, 229, 224), bytes(234, 206, 189), bytes(211, 151, 116), bytes(190, 101, 51),
                       bytes(139, 39, 6)});
    return upper ? above : below;
}

Colour look_up(double value) {
    const double v = std::isfinite(value) ? std::min(1.0, std::max(-1.0, value)) : 0.0;
    const int step = static_cast<int>(std::lround(std::abs(v) * steps));
    return half_map(v >= 0.0)[step];
}

struct ToolPaint {
    tool::Role role;
    Colour hue;
    double eighths;  // of a turn, of its hatching
};

ToolPaint tool_paint(tool::Role role) {
    using tool::Role;
    static constexpr Colour grey = bytes(128, 128, 128);
    static constexpr ToolPaint known[] = {
        {Role::punch, okabe_ito::bluish_green, -1.0},   {Role::die, okabe_ito::orange, 1.0},
        {Role::pad, okabe_ito::sky_blue, -1.5},         {Role::clamp, okabe_ito::reddish_purple, 1.5},
        {Role::holder, okabe_ito::reddish_purple, 1.5}, {Role::die_holder, okabe_ito::reddish_purple, 1.5},
        {Role::gauge, okabe_ito::yellow, 0.5},          {Role::ram, grey, -0.5}};
    for (const ToolPaint& paint : known)
        if (paint.role == role) return paint;
    return {role, grey, 0.0};
}

}  // namespace

const ThemeColours& theme_colours(Theme theme) {
    static const ThemeColours light{bytes(255, 255, 255), bytes(248, 248, 246), bytes(240, 241, 242),
                                    bytes(190, 194, 199), bytes(20, 24, 30),    bytes(88, 94, 102),
                                    bytes(20, 24, 30),    okabe_ito::blue,      okabe_ito::vermillion,
                                    bytes(255, 255, 255), bytes(20, 24, 30),    bytes(255, 255, 255),
                                    bytes(166, 66, 0)};
    static const ThemeColours dark{bytes(16, 19, 24),    bytes(24, 28, 35),    bytes(34, 39, 48),
                                   bytes(76, 84, 96),    bytes(238, 240, 243), bytes(168, 176, 188),
                                   bytes(10, 12, 15),    okabe_ito::sky_blue,  okabe_ito::vermillion,
                                   bytes(255, 255, 255), bytes(238, 240, 243), bytes(16, 19, 24),
                                   bytes(255, 138, 61)};
    return theme == Theme::light ? light : dark;
}

ToolColours tool_colours(tool::Role role, Theme theme) {
    const ToolPaint paint = tool_paint(role);
    const Colour& hue = paint.hue;
    const ThemeColours& colours = theme_colours(theme);
    ToolColours result;
    result.hatch_direction = paint.eighths * 0.785398163397448;
    if (theme == Theme::light) {
        result.fill = mixed(colours.stage, hue, 0.22);
        result.hatch = mixed(colours.stage, hue, 0.62);
        result.outline = mixed(hue, okabe_ito::black, 0.55);
    } else {
        result.fill = mixed(colours.stage, hue, 0.25);
        result.hatch = mixed(colours.stage, hue, 0.60);
        result.outline = mixed(hue, bytes(255, 255, 255), 0.25);
    }
    return result;
}

Colour diverging(double value) {
    return look_up(value);
}

Colour sequential(double value) {
    return look_up(std::max(0.0, value));
}

Colour neutral_line_colour() {
    return bytes(0, 96, 70);
}

Colour with_opacity(Colour colour, double opacity) {
    colour.opacity *= opacity;
    return colour;
}

Colour mixed(const Colour& a, const Colour& b, double part_of_b) {
    const double p = part_of_b;
    return {(1.0 - p) * a.red + p * b.red, (1.0 - p) * a.green + p * b.green, (1.0 - p) * a.blue + p * b.blue,
            (1.0 - p) * a.opacity + p * b.opacity};
}

std::string hex(const Colour& c) {
    const auto byte = [](double v) { return static_cast<int>(std::lround(255.0 * v)); };
    return words("#%02x%02x%02x", byte(c.red), byte(c.green), byte(c.blue));
}

Lab to_lab(const Colour& c) {
    const double r = to_linear(c.red);
    const double g = to_linear(c.green);
    const double b = to_linear(c.blue);
    const double x = compress((0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / white_x);
    const double y = compress(0.2126729 * r + 0.7151522 * g + 0.0721750 * b);
    const double z = compress((0.0193339 * r + 0.1191920 * g + 0.9503041 * b) / white_z);
    return Lab(116.0 * y - 16.0, 500.0 * (x - y), 200.0 * (y - z));
}

double luminance(const Colour& c) {
    return 0.2126729 * to_linear(c.red) + 0.7151522 * to_linear(c.green) + 0.0721750 * to_linear(c.blue);
}

double lightness(const Colour& c) {
    return 116.0 * compress(luminance(c)) - 16.0;
}

}  // namespace overbend::picture
