// Pads and clamps on springs, and the strip's own weight, against hand calculations.
//
// Units  mm, N per mm of width.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "sim/strip/mesh.h"
#include "sim/stroke/placing.h"
#include "sim/stroke/stroke.h"
#include "sim/tool/block.h"
#include "sim/tool/die.h"
#include "sim/tool/punch.h"
#include "tests/tolerance.h"

using namespace overbend;
using overbend::tests::relative_error;
using tool::Vec2;

namespace {

constexpr double thickness = 1.0;

material::LayerLaw steel() {  // invented
    material::Card card;
    card.youngs_modulus = 206e3;
    card.hardening = material::Swift{520.0, 0.006, 0.22};
    return material::LayerLaw(card);
}

stroke::StrokeScene flat_scene(double length, double core, double reach) {
    stroke::StrokeScene scene;
    scene.law = steel();
    const strip::FineZone zone{0.5 * length, core, reach};
    scene.strip = strip::flat_strip(thickness, strip::mesh_blank(length, thickness, {zone}, {}), 11);
    scene.zone = {0.5 * length - reach, 0.5 * length + reach};
    scene.stop.left = 0.0, scene.stop.right = length;
    return scene;
}

tool::RigidTool on_spring(tool::Role role, const tool::ArcOutline& outline, const Vec2& at,
                          tool::Spring spring) {
    tool::RigidTool t{tool::role_word(role), role, outline, at};
    t.spring = spring;
    return t;
}

// Sum of the vertical contact forces on the strip from tools of a role.
double force_from(const stroke::Recording& r, const stroke::State& s, tool::Role role) {
    double sum = 0.0;
    for (const stroke::ContactForce& f : s.contacts)
        if (r.tools[f.tool].role == role) sum += f.force.y();
    return sum;
}

const stroke::State& held(const stroke::Recording& r) {
    return *std::find_if(r.states.begin(), r.states.end(),
                         [](const stroke::State& s) { return s.phase == stroke::Phase::held; });
}

// A channel of 20 mm pressed 8 mm deep over a pad.
stroke::StrokeScene channel_over_pad(tool::Spring spring) {
    stroke::StrokeScene scene = flat_scene(60.0, 13.0, 25.0);
    const tool::ChannelPunch punch{20.0, 2.0, 0.0, 30.0, 16.0, tool::Shank::middle, 60.0};
    const tool::ChannelDie die{22.4, 2.5, 30.0, 0.0, 60.0, 45.0};
    scene.tools.push_back({"punch", tool::Role::punch, tool::make_outline(punch), Vec2::Zero()});
    scene.tools.push_back({"die", tool::Role::die, tool::make_outline(die), Vec2::Zero()});
    scene.tools.push_back(
        on_spring(tool::Role::pad, tool::block_facing_up({20.0, 1.0, 1.0, 10.0}), Vec2(0.0, 0.0), spring));
    stroke::place(scene, 30.0, 12.0, 0.0);
    scene.stop.kind = stroke::StopKind::travel;
    scene.stop.value = 8.0;
    return scene;
}

}  // namespace

TEST_SUITE("stroke") {
    // A strip pressed flat on a pad: force = preload + rate x travel, less the little that strip and contacts
    // give way.
    TEST_CASE("a pad alone carries what its spring says, and lifts the strip again") {
        stroke::StrokeScene scene = flat_scene(12.0, 2.0, 6.0);
        const double initial_gap = 1e-3 * thickness;
        const tool::Block block{20.0, 1.0, 1.0, 10.0};
        tool::RigidTool punch{"punch", tool::Role::punch, tool::block_facing_down(block),
                              Vec2(6.0, 0.5 * thickness + initial_gap)};
        scene.tools = {punch, on_spring(tool::Role::pad, tool::block_facing_up(block),
                                        Vec2(6.0, -0.5 * thickness - initial_gap), {20.0, 5.0})};
        scene.stop.kind = stroke::StopKind::travel;
        scene.stop.value = 3.0;
        const stroke::StrokeResult r = stroke::press(scene, {});
        REQUIRE(r.outcome == stroke::Outcome::reached);
        const double by_hand = 20.0 + 5.0 * 3.0;
        std::printf("pad: %.4f N/mm, by hand %.4f\n", r.stop_force, by_hand);
        CHECK(relative_error(r.stop_force, by_hand) < 0.001);
        const stroke::State& state = held(r.recording);
        CHECK(relative_error(r.stop_force, 20.0 + 5.0 * state.compression[1]) < 3e-5);
        CHECK(std::abs(force_from(r.recording, state, tool::Role::pad) - r.stop_force) < 1e-4 * r.stop_force);
        // Pushed up again, to where it lay.
        CHECK(std::abs(r.free.y[r.free.nodes() / 2]) < 3e-3 * thickness);
        CHECK(r.audit.residue_percent() < 1.0);
        CHECK(relative_error(r.audit.largest, 20.0 * 3.0 + 0.5 * 5.0 * 9.0) < 0.01);
    }

    // What the punch presses with, the pad and the shoulders carry; the pad's part is its spring's.
    TEST_CASE("a channel stroke over a pad is in balance with its spring") {
        for (const tool::Spring spring : {tool::Spring{30.0, 0.0}, tool::Spring{10.0, 6.0}}) {
            const stroke::StrokeResult r = stroke::press(channel_over_pad(spring), {});
            CAPTURE(r.reason);
            REQUIRE(r.outcome == stroke::Outcome::reached);
            for (const stroke::State& s : r.recording.states) {
                if (s.phase != stroke::Phase::pressing || s.travel < 0.5) continue;
                const double pad = force_from(r.recording, s, tool::Role::pad);
                const double die = force_from(r.recording, s, tool::Role::die);
                const double by_hand = spring.preload + spring.rate * s.compression[2];
                CHECK(std::abs(pad - by_hand) < 1e-3 * by_hand);
                CHECK(std::abs(s.punch_force - pad - die) < 1e-3 * s.punch_force);
            }
            const stroke::State& end = held(r.recording);
            std::printf("channel over a pad: punch %.2f N/mm, pad %.2f at %.3f mm; residue %.2f %%\n",
                        end.punch_force, force_from(r.recording, end, tool::Role::pad), end.compression[2],
                        r.audit.residue_percent());
            // The pad goes down with the punch, and a little further under the bow of the strip's floor.
            CHECK(end.compression[2] > 8.0);
            CHECK(end.compression[2] < 8.3);
            CHECK(r.audit.residue_percent() < 1.0);
            // The part stands where the pad has lifted it.
            const stroke::State& last = r.recording.states.back();
            CHECK(std::abs(last.compression[2]) < 0.01);
        }
    }

    // Both flanges hang over by b beyond supports 2 a apart: w b^4/(8 B) + b (w b^2 a/2 - w a^3/3)/B down at
    // their ends, B = E' t^3/12.
    //
    // Source  beam theory: superposition of a cantilever and of a beam on two supports with end moments.
    // Here    the outer edges of the die's top face are the supports, 30 mm apart; small sag, without
    // friction. Allowed 1 per cent.
    TEST_CASE("a long strip sags under its weight as a beam does") {
        stroke::StrokeScene scene = flat_scene(240.0, 2.0, 14.0);
        scene.friction = 0.0;
        scene.tools.push_back({"punch", tool::Role::punch,
                               tool::make_outline(tool::VeePunch{0.5, 1.0, 60.0, 12.0}), Vec2::Zero()});
        scene.tools.push_back(
            {"die", tool::Role::die, tool::make_outline(tool::OpenDie{16.0, 1.0, 40.0, 30.0}), Vec2::Zero()});
        scene.weight = 7850e-9 * 9.81 * thickness;
        stroke::place(scene, 120.0, 8.0, 0.0);
        scene.stop.kind = stroke::StopKind::travel;
        scene.stop.value = 4.0;
        const stroke::StrokeResult r = stroke::press(scene, {});
        REQUIRE(r.outcome == stroke::Outcome::reached);
        const stroke::State& placed = r.recording.states.front();
        const double a = 15.0, b = 105.0, w = scene.weight;
        const double B = scene.law.modulus * std::pow(thickness, 3) / 12.0;
        const double by_hand =
            w * std::pow(b, 4) / (8.0 * B) + b * (w * b * b * a / 2.0 - w * a * a * a / 3.0) / B;
        const double low = 0.5 * thickness - 0.5 * (placed.y.front() + placed.y.back());
        std::printf("sag: %.4f mm, by hand %.4f\n", low, by_hand);
        CHECK(relative_error(low, by_hand) < 0.01);
        // The die carries the weight, and later the punch's force with it.
        CHECK(relative_error(force_from(r.recording, placed, tool::Role::die), w * 240.0) < 1e-3);
        CHECK(r.balance_error < 1e-3);
        CHECK(r.audit.residue_percent() < 1.0);
    }

}  // TEST_SUITE
