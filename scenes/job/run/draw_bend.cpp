#include <algorithm>
#include <array>

#include "scenes/job/run/profile.h"
#include "scenes/job/run/strip_bends.h"
#include "sim/stroke/placing.h"
#include "sim/units.h"

namespace overbend::job {

namespace {

const std::array<double, 4> senses = {-1.0, 1.0, 1.0, -1.0};  // of the bends, from the left

double clearance_of(const DrawBend& b) {
    return b.clearance.value_or(1.1 * b.thickness);
}

double half_opening(const DrawBend& b) {
    return 0.5 * b.punch_width + clearance_of(b);
}

void check(const DrawBend& b) {
    tool::check(b.clamp);
    at_least("travel", b.travel, b.corner_radius + b.shoulder_radius + 6.0 * b.thickness,
             "leaves no wall between the arcs of punch and die");
    at_least("flange", b.flange, b.travel + b.shoulder_radius + clearance_of(b) + 4.0 * b.thickness,
             "is drawn off the die's face", ", or less travel");
}

// Rests on the die's face from the end of the shoulder's arc to beyond the strip's end.
tool::RigidTool make_clamp(const DrawBend& b, double side) {
    const double from = half_opening(b) + b.shoulder_radius;
    const double width = 0.5 * b.punch_width + b.flange + 2.0 * b.thickness - from;
    const double edge = std::min(0.5 * b.thickness, 0.25 * width);
    tool::Block block{width, edge, edge, std::max(0.3 * width, 4.0 * b.thickness)};
    tool::RigidTool clamp{side < 0.0 ? "left clamp" : "right clamp", tool::Role::clamp,
                          tool::block_facing_down(block), tool::Vec2(side * (from + 0.5 * width), 0.0)};
    clamp.spring = b.clamp;
    return clamp;
}

// A stretch of the blank, and the straight line and mean curvature that fit it.
struct Stretch {
    double low = 0.0, high = 0.0;
};
struct Fit {
    double turn = 0.0;       // rad, of the line
    double curvature = 0.0;  // 1/mm, positive closes upwards
};

// Least squares of the sections' turn over the length, each element with its length.
Fit fit(const stroke::Recording& r, const stroke::State& s, const Stretch& over) {
    double length = 0.0, at = 0.0, turn = 0.0, moment = 0.0, square = 0.0;
    const auto each = [&](auto take) {
        for (std::size_t e = 0; e + 1 < r.blank_position.size(); ++e) {
            const double a = r.blank_position[e], b = r.blank_position[e + 1];
            if (a >= over.low && b <= over.high)
                take(b - a, 0.5 * (a + b), 0.5 * (s.theta[e] + s.theta[e + 1]));
        }
    };
    each([&](double l, double x, double theta) { length += l, at += l * x, turn += l * theta; });
    if (length <= 0.0) return {};
    at /= length, turn /= length;
    each([&](double l, double x, double theta) {
        moment += l * (x - at) * (theta - turn), square += l * (x - at) * (x - at);
    });
    return {turn, square > 0.0 ? moment / square : 0.0};
}

// Flange, wall, face, wall, flange, where they are straight under the punch: outside the tools' arcs.
std::vector<Stretch> straight_parts(const DrawBend& b, const stroke::StrokeResult& stroke) {
    const stroke::Recording& r = stroke.recording;
    const auto held = std::find_if(r.states.begin(), r.states.end(),
                                   [](const stroke::State& s) { return s.phase == stroke::Phase::held; });
    const double middle = 0.5 * r.blank_position.back(), t = b.thickness;
    const double face = 0.5 * b.punch_width - b.corner_radius - t;
    const double wall_begins = face + t + (b.corner_radius + 0.5 * t) * 0.5 * pi + t;
    // the shoulder's arc begins at the first place right of the punch that has risen to it
    const double arc_begins = -b.shoulder_radius;
    double wall_ends = wall_begins, flange_begins = b.flange;
    for (std::size_t i = 0; i < r.blank_position.size(); ++i) {
        const double off = r.blank_position[i] - middle;
        if (off > wall_begins && held->y[i] < arc_begins - t) wall_ends = std::max(wall_ends, off);
        if (off > wall_begins && held->x[i] > half_opening(b) + b.shoulder_radius + t)
            flange_begins = std::min(flange_begins, off);
    }
    return {{0.0, middle - flange_begins},
            {middle - wall_ends, middle - wall_begins},
            {middle - face, middle + face},
            {middle + wall_begins, middle + wall_ends},
            {middle + flange_begins, 2.0 * middle}};
}

void read_angles(const DrawBend& b, StripResult& result) {
    const stroke::Recording& r = result.stroke.recording;
    const std::vector<Stretch> parts = straight_parts(b, result.stroke);
    each_read_state(r, [&](const stroke::State& s, bool free) {
        std::vector<Fit> fits;
        for (const Stretch& part : parts) fits.push_back(fit(r, s, part));
        for (std::size_t i = 0; i < senses.size(); ++i)
            (free ? result.bends[i].free : result.bends[i].loaded) =
                senses[i] * (fits[i + 1].turn - fits[i].turn);
        if (free)
            result.measures.push_back({"wall_curvature_free_per_mm", "curvature of the walls free",
                                       -0.5 * (fits[1].curvature + fits[3].curvature), "1/mm"});
    });
}

}  // namespace

StripStroke draw_stroke(const DrawBend& b) {
    check(b);
    const double t = b.thickness, middle = 0.5 * b.punch_width + b.flange;
    StripCase s = strip_case(b, 2.0 * middle);
    s.job.run.elements_per_thickness = std::max(1.0, 0.5 * b.elements_per_thickness);
    // From the punch's corner to what comes to lie on the shoulder in the end.
    const double low = 0.5 * b.punch_width - b.corner_radius - t;
    const double high = half_opening(b) + b.shoulder_radius + b.travel + t;
    const double fine = 0.5 * (high - low), off = 0.5 * (low + high);
    const double out = 0.5 * b.flange - 0.5 * b.travel, wall = middle - off;
    s.read_at = {out, wall, middle, middle + off, 2.0 * middle - out};
    const char* const names[] = {"left shoulder", "left corner", "right corner", "right shoulder"};
    for (std::size_t i = 0; i < senses.size(); ++i)
        add_bend(s, names[i], senses[i], 0.5 * (s.read_at[i] + s.read_at[i + 1]), 0.0);
    s.zones = {{middle - off, fine, std::max(fine, middle)}, {middle + off, fine, std::max(fine, middle)}};

    const double height = b.travel + b.corner_radius + b.shoulder_radius + 20.0 * t;
    s.job.tools = {{"punch", tool::ChannelPunch{b.punch_width, b.corner_radius, 0.0, height, b.punch_width,
                                                tool::Shank::middle, 1.1 * height}},
                   {"die", tool::ChannelDie{2.0 * half_opening(b), b.shoulder_radius, 1.2 * height, 0.0,
                                            2.0 * middle + 4.0 * t, 1.4 * height}}};
    StripStroke stroke = set_up(s, only_step(s));
    for (const double side : {-1.0, 1.0}) stroke.scene.tools.push_back(make_clamp(b, side));
    stroke.scene.zone = {0.0, s.blank.length};
    stroke::place(stroke.scene, middle, middle, 0.0);
    stroke.scene.stop.travel_limit = b.travel;
    return stroke;
}

StripResult bend_draw(const DrawBend& b, const stroke::StrokeOptions& options) {
    stroke::Stop stop;
    stop.value = b.travel;
    StripResult result = press_strip(draw_stroke(b), stop, options);
    if (result.stroke.solved()) read_angles(b, result);
    return result;
}

}  // namespace overbend::job
