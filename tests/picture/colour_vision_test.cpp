// What must be told apart by colour can be told apart by people who see colours otherwise.
//
//   linear rgb seen = M linear rgb
//
// Source  G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A physiologically-based model for simulation of
//         color vision deficiency", IEEE Trans. Visualization and Computer Graphics 15 (2009) 1291-1298: the
//         matrices of full severity, from memory. Each row sums to 1, since white stays white: checked.
// Here    applied to linear light, results held to 0 to 1.
// Allowed a distance of 8 in CIELAB between what must be told apart (2 is just seen), 20 between the ends of
//         a scale; tools are hatched in different directions besides.

#include <doctest/doctest.h>

#include <Eigen/Core>
#include <algorithm>
#include <cmath>

#include "render/picture/palette.h"

using namespace overbend;
using namespace overbend::picture;

namespace {

struct Vision {
    const char* name;
    Eigen::Matrix3d m;
};

std::vector<Vision> visions() {
    Eigen::Matrix3d protan, deutan, tritan;
    protan << 0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998;
    deutan << 0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881;
    tritan << 1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900;
    return {
        {"usual", Eigen::Matrix3d::Identity()}, {"protan", protan}, {"deutan", deutan}, {"tritan", tritan}};
}

double to_linear(double c) {
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}
double from_linear(double c) {
    c = std::min(1.0, std::max(0.0, c));
    return c <= 0.0031308 ? 12.92 * c : 1.055 * std::pow(c, 1.0 / 2.4) - 0.055;
}

Colour seen(const Colour& c, const Vision& vision) {
    const Eigen::Vector3d light =
        vision.m * Eigen::Vector3d(to_linear(c.red), to_linear(c.green), to_linear(c.blue));
    return {from_linear(light(0)), from_linear(light(1)), from_linear(light(2)), 1.0};
}

double distance(const Colour& a, const Colour& b, const Vision& vision) {
    return (to_lab(seen(a, vision)) - to_lab(seen(b, vision))).norm();
}

constexpr double told_apart = 8.0;
constexpr double far_apart = 20.0;

}  // namespace

TEST_CASE("white and greys stay what they are") {
    for (const Vision& vision : visions())
        for (int row = 0; row < 3; ++row)
            CHECK(vision.m.row(row).sum() == doctest::Approx(1.0).epsilon(1e-5));
}

TEST_CASE("tools that stand next to one another differ in colour, or clearly in hatching") {
    const tool::Role roles[] = {tool::Role::punch, tool::Role::die, tool::Role::pad, tool::Role::holder,
                                tool::Role::gauge};
    for (const Theme theme : {Theme::light, Theme::dark})
        for (const Vision& vision : visions())
            for (const tool::Role a : roles)
                for (const tool::Role b : roles) {
                    if (a >= b) continue;
                    CAPTURE(vision.name);
                    CAPTURE(tool::role_word(a));
                    CAPTURE(tool::role_word(b));
                    const ToolColours first = tool_colours(a, theme);
                    const ToolColours second = tool_colours(b, theme);
                    const double turned = std::abs(first.hatch_direction - second.hatch_direction);
                    const double apart = distance(first.hatch, second.hatch, vision);
                    CAPTURE(apart);
                    CHECK((apart > told_apart || turned > 0.75));  // 43 degrees
                    CHECK(turned > 0.35);                          // 20 degrees, for greyscale prints
                }
}

TEST_CASE("what was under load, what is now and an interference differ") {
    for (const Theme theme : {Theme::light, Theme::dark})
        for (const Vision& vision : visions()) {
            const ThemeColours& c = theme_colours(theme);
            CAPTURE(vision.name);
            CHECK(distance(c.loaded, c.ink, vision) > far_apart);
            CHECK(distance(c.alarm, c.ink, vision) > far_apart);
            CHECK(distance(c.alarm, c.loaded, vision) > far_apart);
            CHECK(distance(c.alarm_words, c.ink, vision) > far_apart);
        }
}

TEST_CASE("tension and compression differ, from a quarter of the scale on") {
    for (const Vision& vision : visions())
        for (const double part : {0.25, 0.5, 0.75, 1.0}) {
            CAPTURE(vision.name);
            CAPTURE(part);
            CHECK(distance(diverging(part), diverging(-part), vision) >
                  (part < 0.5 ? told_apart : far_apart));
        }
}

TEST_CASE("the neutral line is seen on all the strip's colours that it may lie on") {
    // It lies in a light casing near the middle of the section, where stresses change sign.
    for (const Vision& vision : visions())
        CHECK(distance(neutral_line_colour(), diverging(0.0), vision) > far_apart);
}
