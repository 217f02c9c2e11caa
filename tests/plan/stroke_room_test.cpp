// Whether a half-formed strip has room, found by conservative advancement and remembered, against looking at
// many instants and many points of its surface with the outlines' exact distance. Parts and tools are drawn
// at random.

#include "sim/plan/stroke_room.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "sim/tool/die.h"
#include "sim/tool/punch.h"
#include "sim/tool/signed_distance.h"
#include "sim/units.h"
#include "tests/sweep/numbers.h"

using namespace overbend;
using namespace overbend::plan;
using Eigen::Vector2d;
using tests::Numbers;

namespace {

struct Scene {
    FoldedPart part;
    int bend = 0;
    StrokePath path;
    tool::ArcOutline punch, die;
    double reach = 0.0;
};

Scene random_scene(Numbers& draw) {
    FoldedPart part;
    part.thickness = draw.between(0.5, 2.0);
    const int bends = 2 + static_cast<int>(draw.between(0.0, 3.99));
    for (int b = 0; b < bends; ++b) {
        const double angle = draw.between(30.0, 120.0) * degree;
        part.angle.push_back(draw.coin() ? angle : -angle);
        part.radius.push_back(part.thickness * draw.between(1.0, 2.0));
        part.allowance.push_back(angle * part.radius.back());
    }
    for (int i = 0; i <= bends; ++i) part.flats.push_back(part.thickness * draw.between(8.0, 30.0));
    const int bend = static_cast<int>(draw.between(0.0, bends - 0.01));
    part.angle[bend] = std::abs(part.angle[bend]);

    const double t = part.thickness, opening = 8.0 * t;
    const double nose = part.radius[bend] - 0.5 * t;
    const tool::VeePunch punch{40.0 * degree, nose, 60.0, std::max(8.0, 3.0 * nose)};
    const tool::VeeDie die{{{50.0 * degree, opening, t, 0.3}}, opening + 12.0, 40.0};
    StrokePath path;
    path.thickness = t;
    path.free = part.angle[bend], path.loaded = path.free + 2.0 * degree;
    path.half_allowance = 0.5 * part.allowance[bend];
    path.nose = nose, path.shoulder = t, path.shoulder_x = 0.5 * opening;
    return {part, bend, path, tool::make_outline(punch), tool::make_outline(die, 1), opening};
}

// Least distance over the stroke of the side's surface from punch and die, as far as it may not touch.
struct Least {
    double punch = 1e300, die = 1e300;
};
Least sampled(const Scene& scene, const Side& side, bool mirror, BendSet made) {
    constexpr int instants = 240;
    Least least;
    for (int m = 0; m <= instants; ++m) {
        const PathPoint point = at(scene.path, static_cast<double>(m) / instants);
        const Frame& f = mirror ? point.left : point.right;
        for (int g = 0; g < side.groups(); ++g)
            for (const clearance::Convex& piece : pieces_of(side, g, made, scene.reach))
                for (std::size_t i = 0; i < piece.corners.size(); ++i) {
                    const Vector2d a = piece.corners[i], b = piece.corners[(i + 1) % piece.corners.size()];
                    const int count = 1 + static_cast<int>((b - a).norm() / (0.25 * side.thickness));
                    for (int k = 0; k < count; ++k) {
                        const Vector2d own = a + (b - a) * k / count;
                        Vector2d here = f.at + own.x() * f.along() + own.y() * f.across();
                        if (mirror) here.x() = -here.x();
                        const Vector2d in_punch = here - Vector2d(0.0, point.ram);
                        least.punch = std::min(least.punch, tool::nearest(scene.punch, in_punch).distance);
                        least.die = std::min(least.die, tool::nearest(scene.die, here).distance);
                    }
                }
    }
    return least;
}

}  // namespace

TEST_CASE("room in a stroke is what many moments and points say") {
    const double margin = 0.2;
    int roomy = 0, tight = 0, doubtful = 0;
    for (int n = 0; n < 60; ++n) {
        Numbers draw(1000 + n);
        const Scene scene = random_scene(draw);
        const clearance::Solid punch(scene.punch), die(scene.die);
        const std::vector<Obstacle> obstacles = {{&punch, Vector2d::Zero(), true, false, "punch"},
                                                 {&die, Vector2d::Zero(), false, true, "die"}};
        RoomOptions options;
        options.margin = margin;
        const Side left = left_of(scene.part, scene.bend), right = right_of(scene.part, scene.bend);
        StrokeRoom room(scene.path, left, right, obstacles, scene.reach, scene.reach, options);
        const BendSet all_left = (BendSet{1} << (left.groups() - 1)) - 1;
        const BendSet all_right = (BendSet{1} << (right.groups() - 1)) - 1;
        for (BendSet a = 0; a <= all_left; ++a)
            for (BendSet b = 0; b <= all_right; ++b) {
                CAPTURE(n);
                CAPTURE(a);
                CAPTURE(b);
                if (!room.is_supported(a, b)) continue;
                const Least l = sampled(scene, left, true, a), r = sampled(scene, right, false, b);
                const double spare = std::min(std::min(l.punch, r.punch) - margin,
                                              std::min(l.die, r.die) + 0.1 * scene.part.thickness);
                // the outlines' arcs are cut to chords, the strip's are covered from outside
                if (std::abs(spare) < 0.06 * scene.part.thickness) {
                    ++doubtful;
                    continue;
                }
                const bool clear = !room.worst_hit(a, b).has_value() || room.worst_hit(a, b)->obstacle < 0;
                CHECK(clear == (spare > 0.0));
                if (spare < 0.0) CHECK_FALSE(room.has_room(a, b));
                (spare > 0.0 ? roomy : tight) += 1;
                // the strip against itself is looked at elsewhere
                if (spare > 0.0 && !room.worst_hit(a, b)) CHECK(room.has_room(a, b));
            }
    }
    CHECK(roomy > 100);
    CHECK(tight > 100);
    CHECK(doubtful < 40);
}

TEST_CASE("a strip that closes on itself has no room") {
    // Three right angles of a square of 20 mm, then a flange longer than its side: it runs into the first
    // flat.
    FoldedPart part;
    part.thickness = 1.0;
    const double right = 90.0 * degree;
    part.angle = {right, right, right, right};
    part.radius.assign(4, 2.0);
    part.allowance.assign(4, 2.0 * right);
    part.flats = {10.0, 20.0, 20.0, 20.0, 15.0};
    StrokePath path;
    path.thickness = 1.0, path.loaded = path.free = right, path.half_allowance = right;
    path.nose = 1.5, path.shoulder = 1.0, path.shoulder_x = 4.0;
    StrokeRoom room(path, left_of(part, 1), right_of(part, 1), {}, 5.0, 5.0, {});
    CHECK(room.has_room(0b0, 0b00));
    CHECK(room.has_room(0b1, 0b01));
    CHECK_FALSE(room.has_room(0b1, 0b11));
    REQUIRE(room.worst_hit(0b1, 0b11).has_value());
    CHECK(room.worst_hit(0b1, 0b11)->obstacle == -1);
}

TEST_CASE("a punch that cannot come down past a flange asks for sliding the strip in or off") {
    // A channel with a lip over its mouth: after the stroke the lip is above the foot, under the shank's
    // overhang.
    FoldedPart part;
    part.thickness = 1.0;
    const double right = 90.0 * degree;
    part.angle = {right, right, right};
    part.radius.assign(3, 2.0);
    part.allowance.assign(3, 2.0 * right);
    part.flats = {7.0, 13.0, 15.0, 24.0};
    const tool::ChannelPunch foot{17.0, 1.5, 2.0 * degree, 10.5, 7.0, tool::Shank::right, 60.0};
    const clearance::Solid punch(tool::make_outline(foot));
    StrokePath path;
    path.kind = StrokeKind::channel;
    path.thickness = 1.0, path.loaded = 91.0 * degree, path.free = right, path.half_allowance = right;
    path.nose = 1.5, path.nose_x = 7.5, path.shoulder = 2.0, path.shoulder_x = 12.0, path.lowest = -8.0;
    StrokeRoom room(path, left_of(part, 1), right_of(part, 2),
                    {{&punch, Vector2d::Zero(), true, false, "punch"}}, 10.0, 10.0, {});
    REQUIRE(room.has_room(0b1, 0b0));
    CHECK(room.slides(0b1, 0b0) == 1);
    CHECK(room.slides(0b0, 0b0) == 0);
}
