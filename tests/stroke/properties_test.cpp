// What holds for every V bend, whatever the metal and the tools.
//
// Here    random V bends from a fixed seed: thickness 0.5 to 3 mm, die opening 8 to 12 thicknesses, nose and
//         shoulders 0.5 to 2, friction 0 to 0.2, Swift's law; 11 layers. In a narrower die a large nose
//         wraps the strip round itself: a stroke in two then differs by 0.06 degree.
// Source  mechanics: similarity, plasticity without a time of its own, springback as stress over stiffness.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "sim/stroke/placing.h"
#include "sim/units.h"
#include "tests/stop_at.h"
#include "tests/stroke/strip_metals.h"
#include "tests/sweep/numbers.h"

using namespace overbend;
using namespace overbend::tests;
using stroke::StopKind;

namespace {

job::VeeBend random_bend(std::uint64_t seed) {
    Numbers n(seed * 2862933555777941757ULL + 77);
    job::VeeBend b;
    b.material = hardening_metal();
    b.material.hardening =
        material::Swift{n.between(150.0, 1200.0), n.between(0.001, 0.02), n.between(0.05, 0.3)};
    b.thickness = n.between(0.5, 3.0);
    b.die_opening = b.thickness * n.between(8.0, 12.0);
    b.nose_radius = b.thickness * n.between(0.5, 2.0);
    b.shoulder_radius = b.thickness * n.between(0.5, 2.0);
    b.friction = n.between(0.0, 0.2);
    b.layers = 11;
    return b;
}

constexpr int bends = 8;

stroke::StrokeOptions unrecorded() {
    stroke::StrokeOptions options;
    options.record = false;
    return options;
}

job::VeeResult pressed(const job::VeeBend& b, const stroke::Stop& stop) {
    const job::VeeResult r = job::bend_vee(b, stop, unrecorded());
    CAPTURE(r.stroke.reason);
    REQUIRE(r.stroke.outcome == stroke::Outcome::reached);
    return r;
}

job::VeeResult to_free(const job::VeeBend& b, double turned) {
    return pressed(b, stop_at(StopKind::free_angle, turned));
}

}  // namespace

TEST_SUITE("stroke") {
    TEST_CASE("more travel never opens a V under load, nor a free one") {
        for (std::uint64_t seed = 0; seed < bends; ++seed) {
            CAPTURE(seed);
            const job::VeeBend b = random_bend(seed);
            double loaded = 0.0, free = 0.0;
            for (const double way : {0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35}) {
                const job::VeeResult r = pressed(b, stop_at(StopKind::travel, way * b.die_opening));
                CHECK(r.loaded > loaded);
                CHECK(r.free >= free - 1e-6);
                loaded = r.loaded, free = r.free;
            }
        }
    }

    // Springback is the elastic turn of a moment that grows with the flow stress and with the square of the
    // thickness, over a stiffness that grows with its cube.
    TEST_CASE("a strip of lower yield, and a thicker one in the same tools, springs back less") {
        for (std::uint64_t seed = 0; seed < bends; ++seed) {
            CAPTURE(seed);
            const job::VeeBend b = random_bend(seed);
            job::VeeBend weaker = b, thicker = b;
            weaker.material = material::with_strength(b.material, 0.85);
            thicker.thickness *= 1.1;
            const double turned = 60.0 * degree;
            const double plain = to_free(b, turned).springback();
            CHECK(to_free(weaker, turned).springback() < 0.95 * plain);
            CHECK(to_free(thicker, turned).springback() < 0.98 * plain);
        }
    }

    // Allowed 5e-3 degree and 1e-4: the tolerances of equilibrium and stop.
    TEST_CASE("all sizes times a factor: the same angles, and forces times the factor") {
        for (std::uint64_t seed = 0; seed < bends; ++seed) {
            CAPTURE(seed);
            const job::VeeBend b = random_bend(seed);
            job::VeeBend large = b;
            constexpr double factor = 3.7;
            for (double* size : {&large.thickness, &large.die_opening, &large.nose_radius,
                                 &large.shoulder_radius, &large.bottom_radius})
                *size *= factor;
            const job::VeeResult small = pressed(b, stop_at(StopKind::travel, 0.3 * b.die_opening));
            const job::VeeResult r = pressed(large, stop_at(StopKind::travel, 0.3 * large.die_opening));
            CHECK(std::abs(r.loaded - small.loaded) < 5e-3 * degree);
            CHECK(std::abs(r.free - small.free) < 5e-3 * degree);
            CHECK(std::abs(r.stroke.peak_force / (factor * small.stroke.peak_force) - 1.0) < 1e-4);
        }
    }

    // Not deeper: a strip without friction that is bent far slides to one side, as a real one would.
    TEST_CASE("as friction goes to nothing, the bend goes to that without friction") {
        for (std::uint64_t seed = 0; seed < bends; ++seed) {
            CAPTURE(seed);
            job::VeeBend b = random_bend(seed);
            const stroke::Stop stop = stop_at(StopKind::travel, 0.2 * b.die_opening);
            b.friction = 0.0;
            const job::VeeResult none = pressed(b, stop);
            for (const double friction : {1e-2, 1e-3, 1e-4}) {
                CAPTURE(friction);
                b.friction = friction;
                const job::VeeResult r = pressed(b, stop);
                // A hundredth of friction moves an angle by some tenth of a degree, a force by some per cent.
                CHECK(std::abs(r.free - none.free) < (0.003 + 30.0 * friction) * degree);
                CHECK(std::abs(r.stroke.peak_force / none.stroke.peak_force - 1.0) < 1e-4 + 5.0 * friction);
            }
        }
    }

    // Elastic on the way back and down again: nothing is left of the halt but the hold of friction.
    // Allowed 0.05 degree.
    TEST_CASE("a stroke in two, the punch off the strip between, gives the same") {
        double worst = 0.0;
        for (std::uint64_t seed = 0; seed < bends; ++seed) {
            CAPTURE(seed);
            const job::VeeBend b = random_bend(seed);
            stroke::StrokeScene scene = job::vee_stroke(b).scene;
            scene.stop.kind = StopKind::travel;
            const double whole = 0.25 * b.die_opening, lowest = scene.tools.front().position.y() - whole;
            scene.stop.value = whole;
            const stroke::StrokeResult at_once = stroke::press(scene, unrecorded());
            scene.stop.value = 0.6 * whole;
            const stroke::StrokeResult first = stroke::press(scene, unrecorded());
            REQUIRE(first.solved());
            scene.strip = first.free;
            stroke::place(scene, 0.5 * (scene.stop.left + scene.stop.right), b.die_opening, 0.0);
            scene.stop.value = scene.tools.front().position.y() - lowest;
            const stroke::StrokeResult second = stroke::press(scene, unrecorded());
            CAPTURE(second.reason);
            REQUIRE(second.outcome == stroke::Outcome::reached);
            const auto turn = [](const stroke::StrokeResult& r) {
                return r.free.theta.back() - r.free.theta.front();
            };
            worst = std::max(worst, std::abs(turn(second) - turn(at_once)));
            CHECK(std::abs(turn(second) - turn(at_once)) < 0.05 * degree);
        }
        std::printf("a stroke in two: at most %.4f deg apart\n", worst / degree);
    }

}  // TEST_SUITE
