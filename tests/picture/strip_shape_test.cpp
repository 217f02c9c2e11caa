// The strip's shape: surfaces, layers, mid-line; bend angles; what a view shows.

#include "render/picture/strip_shape.h"

#include <doctest/doctest.h>

#include <cmath>

#include "render/picture/bend_mark.h"
#include "render/picture/view.h"
#include "sim/errors.h"
#include "sim/units.h"
#include "tests/picture/synthetic_recording.h"

using namespace overbend;
using namespace overbend::picture;
using overbend::tests::synthetic_recording;
using overbend::tests::SyntheticStroke;

namespace {

double area(const std::vector<Place>& p) {
    double twice = 0.0;
    for (size_t i = 0, j = p.size() - 1; i < p.size(); j = i++)
        twice += p[j].x() * p[i].y() - p[i].x() * p[j].y();
    return 0.5 * twice;
}

int held(const stroke::Recording& r) {
    for (size_t i = 0; i < r.states.size(); ++i)
        if (r.states[i].phase == stroke::Phase::held) return static_cast<int>(i);
    return -1;
}

}  // namespace

// Without warp: the integral of 1 / sqrt(stretch^2 - 2 z curvature), with the means of both elements at a
// node.
TEST_CASE("a layer's height is the sum of the thicknesses below it") {
    stroke::Recording r = synthetic_recording();
    stroke::State& s = r.states[held(r)];
    s.stretch[3] = 1.02, s.stretch[4] = 1.0, s.curvature[3] = 0.3, s.curvature[4] = 0.4;
    const double stretch = 1.01, curvature = 0.35, z = 0.4 * r.thickness;
    double sum = 0.0;
    const int steps = 20000;
    for (int i = 0; i < steps; ++i) {
        const double at = z * (i + 0.5) / steps;
        sum += z / steps / std::sqrt(stretch * stretch - 2.0 * at * curvature);
    }
    const std::vector<double> heights =
        heights_at_node(material::SectionShape(r.thickness, {0.0, z}), r, s, 4);
    REQUIRE(heights.size() == 4);
    CHECK(heights[1] == 0.0);
    CHECK(heights[2] == doctest::Approx(sum).epsilon(1e-8));
    // A warp that grows along the strip moves it.
    s.warp.assign(2 * s.x.size(), 0.0);
    for (std::size_t i = 0; i < s.x.size(); ++i) s.warp[2 * i] = 0.05 * static_cast<double>(i);
    CHECK(heights_at_node(material::SectionShape(r.thickness, {0.0, z}), r, s, 4)[2] != heights[2]);
}

TEST_CASE("the layers cover the strip's thickness, each above the last") {
    const stroke::Recording r = synthetic_recording();
    const stroke::State& state = r.states[held(r)];
    const std::vector<Station> at = stations(r, state, 0.2);
    double layers = 0.0;
    for (size_t i = 0; i < at.size(); ++i) {
        REQUIRE(at[i].edge.size() == r.layer_height.size() + 1);
        for (size_t k = 1; k < at[i].edge.size(); ++k) CHECK(at[i].edge[k] > at[i].edge[k - 1]);
        const double thickness = at[i].edge.back() - at[i].edge.front();
        CHECK(thickness == doctest::Approx(r.thickness).epsilon(0.15));  // the bend is a little thicker
        for (size_t k = 0; i > 0 && k + 1 < at[i].edge.size(); ++k)
            layers += area({at[i - 1].at(at[i - 1].edge[k]), at[i].at(at[i].edge[k]),
                            at[i].at(at[i].edge[k + 1]), at[i - 1].at(at[i - 1].edge[k + 1])});
    }
    CHECK(layers == doctest::Approx(area(strip_outline(at))).epsilon(1e-9));
}

TEST_CASE("the mid-line of an evenly curved strip is round") {
    // One element of a quarter circle of radius 4 would be far off; a tenth of it is within 1 in 100 000.
    stroke::Recording r;
    r.thickness = 1.0;
    r.layer_height = {0.0};
    r.layer_weight = {1.0};
    stroke::State s;
    for (int i = 0; i <= 10; ++i) {
        const double theta = 0.05 * pi * i;
        r.blank_position.push_back(4.0 * theta);
        s.theta.push_back(theta);
        s.x.push_back(4.0 * std::sin(theta));
        s.y.push_back(4.0 * (1.0 - std::cos(theta)));
    }
    s.stretch.assign(10, 1.0);
    s.curvature.assign(10, 0.25);
    s.hoop_stress.assign(10, 0.0f);
    s.plastic_strain.assign(10, 0.0f);
    r.states = {s};
    for (const Station& at : stations(r, s, 0.1))
        CHECK((at.middle - Place(0.0, 4.0)).norm() == doctest::Approx(4.0).epsilon(1e-4));
}

TEST_CASE("a recording that cannot be drawn is an error with a name") {
    CHECK_THROWS_AS(check_recording(stroke::Recording{}), OutOfRange);
    stroke::Recording r = synthetic_recording();
    r.states[3].theta.pop_back();
    CHECK_THROWS_WITH_AS(check_recording(r), doctest::Contains("state 3"), OutOfRange);
}

TEST_CASE("a state between two is half way") {
    const stroke::Recording r = synthetic_recording();
    const stroke::State s = blended(r, r.states[4], r.states[5], 0.5);
    CHECK(s.travel == doctest::Approx(0.5 * (r.states[4].travel + r.states[5].travel)));
    CHECK(s.y[7] == doctest::Approx(0.5 * (r.states[4].y[7] + r.states[5].y[7])));
    REQUIRE(s.contacts.size() == 3);
    CHECK(s.contacts[0].force.y() ==
          doctest::Approx(0.5 * (r.states[4].contacts[0].force.y() + r.states[5].contacts[0].force.y())));
}

TEST_CASE("a contact that only one of two states has fades") {
    const stroke::Recording r = synthetic_recording();
    const stroke::State s = blended(r, r.states[0], r.states[1], 0.25);
    REQUIRE(s.contacts.size() == 3);
    CHECK(s.contacts[0].force.y() == doctest::Approx(0.25 * r.states[1].contacts[0].force.y()));
}

TEST_CASE("bend angles are measured on the flats, whichever way the strip lies") {
    for (const bool turned : {false, true}) {
        SyntheticStroke stroke;
        stroke.turned = turned;
        const stroke::Recording r = synthetic_recording(stroke);
        std::vector<BendMark> bends{{"lip", stroke.bend_line, 0.0, {}, {}}};
        bends[0].reach = found_reach(r, bends, 0);
        CHECK(bends[0].reach > 4.0);
        CHECK(measured(r, r.states.front(), bends[0]).angle == doctest::Approx(0.0));
        // Towards the blank's right end from further away: the left one's place stays.
        std::vector<BendMark> longer = bends;
        longer[0].reach_after = bends[0].reach + 2.0;
        const MeasuredBend one = measured(r, r.states[held(r)], bends[0]),
                           other = measured(r, r.states[held(r)], longer[0]);
        CHECK((turned ? one.right.at - other.right.at : one.left.at - other.left.at).norm() == 0.0);
        CHECK((turned ? one.left.at - other.left.at : one.right.at - other.right.at).norm() ==
              doctest::Approx(2.0).epsilon(0.05));
        CHECK(measured(r, r.states[held(r)], bends[0]).angle == doctest::Approx(stroke.end_angle));
        CHECK(measured(r, r.states.back(), bends[0]).angle ==
              doctest::Approx(stroke.end_angle - stroke.springback));
        const MeasuredBend bend = measured(r, r.states.back(), bends[0]);
        CHECK(std::abs(bend.corner.x()) < 0.05);
    }
}

TEST_CASE("a view holds the whole strip when it is not much larger than the die") {
    const stroke::Recording r = synthetic_recording();
    const View view = choose_view(r, {1280, 720});
    for (const stroke::State& s : r.states)
        for (size_t i = 0; i < s.x.size(); ++i) {
            const Point p = view.on_picture(Place(s.x[i], s.y[i]));
            REQUIRE(holds(view.stage, Rect{p.x(), p.y(), 0.0, 0.0}));
        }
}

TEST_CASE("of a very long strip a view shows the part about the die") {
    SyntheticStroke stroke;
    stroke.length = 600.0;
    stroke.bend_line = 300.0;
    const stroke::Recording r = synthetic_recording(stroke);
    CHECK(choose_view(r, {1280, 720}).width_mm() < 80.0);
}

TEST_CASE("the names of the tools are never crossed by the strip") {
    for (const double shank_width : {4.0, 12.0, 40.0})
        for (const double length : {24.0, 42.0, 120.0}) {
            SyntheticStroke stroke;
            stroke.length = length;
            stroke.bend_line = 0.4 * length;
            stroke.shank_width = shank_width;
            const stroke::Recording r = synthetic_recording(stroke);
            for (const PictureSize size : {PictureSize{1280, 720}, PictureSize{1080, 1080}}) {
                const View view = choose_view(r, size);
                CAPTURE(shank_width);
                CAPTURE(length);
                CHECK(view.labels.size() == 2);
                for (const ToolLabel& label : view.labels)
                    for (const stroke::State& s : r.states)
                        for (const Station& at : stations(r, s, 0.3)) {
                            const Point p = view.on_picture(at.middle);
                            REQUIRE_FALSE(overlap(grown(label.box, 0.5 * r.thickness * view.scale),
                                                  {p.x(), p.y(), 1e-6, 1e-6}));
                        }
            }
        }
}
