// Colours: in order in greyscale, evenly spaced, and words that can be read on what they stand on.

#include "render/picture/palette.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace overbend;
using namespace overbend::picture;

namespace {

// Contrast of two colours, 1 to 21. Source: Web Content Accessibility Guidelines 2.1, W3C 2018, "contrast
// ratio": at least 4.5 for words, 3 for large words and marks.
double contrast(const Colour& a, const Colour& b) {
    const double low = std::min(luminance(a), luminance(b));
    const double high = std::max(luminance(a), luminance(b));
    return (high + 0.05) / (low + 0.05);
}

}  // namespace

TEST_CASE("luminance of black, white and a grey in the middle") {
    CHECK(luminance(Colour{0.0, 0.0, 0.0, 1.0}) == doctest::Approx(0.0));
    CHECK(luminance(Colour{1.0, 1.0, 1.0, 1.0}) == doctest::Approx(1.0).epsilon(1e-6));
    CHECK(lightness(Colour{119 / 255.0, 119 / 255.0, 119 / 255.0, 1.0}) ==
          doctest::Approx(50.0).epsilon(0.01));
}

TEST_CASE("the map of stress falls in luminance from zero to either end") {
    for (const double side : {-1.0, 1.0}) {
        double last = luminance(diverging(0.0));
        for (int i = 1; i <= 60; ++i) {
            const double now = luminance(diverging(side * i / 60.0));
            CAPTURE(side);
            CAPTURE(i);
            CHECK(now < last);
            last = now;
        }
    }
}

TEST_CASE("both ends of the map are about as dark, and neither hides a black outline") {
    CHECK(std::abs(lightness(diverging(-1.0)) - lightness(diverging(1.0))) < 8.0);
    CHECK(lightness(diverging(-1.0)) > 20.0);
    CHECK(lightness(diverging(1.0)) > 20.0);
}

// Evenly spaced by difference of colour, part of which is hue: so the steps of lightness are even only
// roughly.
TEST_CASE("equal steps of stress change the lightness about equally") {
    for (const double side : {-1.0, 1.0}) {
        const double whole = lightness(diverging(0.0)) - lightness(diverging(side));
        for (int i = 0; i < 10; ++i) {
            const double step =
                lightness(diverging(side * i / 10.0)) - lightness(diverging(side * (i + 1) / 10.0));
            CAPTURE(side);
            CAPTURE(i);
            CHECK(step > 0.04 * whole);
            CHECK(step < 0.16 * whole);
        }
    }
}

TEST_CASE("values outside the scale are held at its ends, and no number is zero") {
    CHECK(luminance(diverging(3.0)) == luminance(diverging(1.0)));
    CHECK(luminance(diverging(-3.0)) == luminance(diverging(-1.0)));
    CHECK(luminance(sequential(-1.0)) == luminance(sequential(0.0)));
    CHECK(luminance(diverging(std::nan(""))) == luminance(diverging(0.0)));
}

TEST_CASE("words and marks stand out from what is behind them in both themes") {
    for (const Theme theme : {Theme::light, Theme::dark}) {
        const ThemeColours& c = theme_colours(theme);
        for (const Colour& behind : {c.page, c.stage, c.panel}) {
            CHECK(contrast(c.ink, behind) > 10.0);
            CHECK(contrast(c.muted, behind) > 4.5);
            CHECK(contrast(c.loaded, behind) > 4.5);
            CHECK(contrast(c.alarm, behind) > 3.0);
        }
        CHECK(contrast(c.accent, c.accent_ink) > 10.0);
    }
}

TEST_CASE("punch and die differ in colour and in the direction of their hatching") {
    for (const Theme theme : {Theme::light, Theme::dark}) {
        const ToolColours punch = tool_colours(tool::Role::punch, theme);
        const ToolColours die = tool_colours(tool::Role::die, theme);
        CHECK(std::abs(punch.fill.red - die.fill.red) + std::abs(punch.fill.blue - die.fill.blue) > 0.1);
        CHECK(punch.hatch_direction != die.hatch_direction);
        CHECK(contrast(punch.outline, theme_colours(theme).stage) > 4.5);
        CHECK(contrast(die.outline, theme_colours(theme).stage) > 4.5);
    }
}
