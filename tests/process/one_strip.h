// What the checks of the strokes of one strip have in common.

#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "scenes/files/case/read_card.h"
#include "scenes/job/run/strip_stroke.h"
#include "sim/errors.h"
#include "sim/tool/signed_distance.h"
#include "tests/stop_at.h"

namespace overbend::tests {

// One millimetre of mild steel, computed fast.
template <class Bend>
Bend plain() {
    Bend bend;
    bend.material = files::read_card("dc01", ".");
    bend.layers = 9;
    bend.elements_per_thickness = 5.0;
    return bend;
}

// Least distance of the strip's nodes' surfaces from a tool, where it stands before the stroke.
inline double gap_to(const stroke::StrokeScene& scene, const tool::RigidTool& t) {
    double least = 1e300;
    const strip::StripState& s = scene.strip;
    for (int i = 0; i < s.nodes(); ++i)
        for (const double side : {0.5, -0.5}) {
            const double off = side * s.thickness;
            const tool::Vec2 at(s.x[i] - off * std::sin(s.theta[i]), s.y[i] + off * std::cos(s.theta[i]));
            least = std::min(least, tool::nearest(t.outline, at - t.position).distance);
        }
    return least;
}

// Every tool stands the initial gap from the strip, none in it. The nodes are not where it comes nearest:
// allowed is what the curvature of a tool's corner makes of half an element.
// inside: how deep the strip may lie in a tool, in thicknesses: the corner of a slanting strip's end lies a
// little beyond the last point that contact looks at.
inline void check_placed(const stroke::StrokeScene& scene, double inside = -0.3e-3) {
    for (const tool::RigidTool& t : scene.tools) {
        CAPTURE(t.name);
        const double gap = gap_to(scene, t);
        CHECK(gap > -inside * scene.strip.thickness);
        CHECK(gap < 0.05 * scene.strip.thickness);
    }
}

inline void check_symmetric(const stroke::StrokeScene& scene) {
    const std::vector<double>& x = scene.strip.x;
    double worst = 0.0;
    for (std::size_t i = 0; i < x.size(); ++i) worst = std::max(worst, std::abs(x[i] + x[x.size() - 1 - i]));
    CHECK(worst < 1e-6 * scene.strip.thickness);
}

// What is refused names what is wrong.
template <class Make>
void check_refused(const std::string& name, Make make) {
    CAPTURE(name);
    try {
        make();
        FAIL("taken");
    } catch (const OutOfRange& error) {
        CAPTURE(std::string(error.what()));
        CHECK(error.name == name);
        CHECK_FALSE(error.wrong.empty());
        CHECK_FALSE(error.right.empty());
    }
}

// Ended at its stop, work accounted for.
inline void check_done(const stroke::StrokeResult& s) {
    CAPTURE(s.reason);
    CHECK(s.outcome == stroke::Outcome::reached);
    CHECK(s.audit.residue_percent() < 1.5);
    CHECK(s.balance_error < 1e-3);
}

}  // namespace overbend::tests
