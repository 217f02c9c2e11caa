#include "sim/clearance/least_distance.h"

#include <algorithm>
#include <cmath>

#include "sim/strip/place.h"
#include "sim/tool/signed_distance.h"

namespace overbend::clearance {

namespace {

// Whether this part of the strip is pressed or carried by the tool as it should be.
bool belongs(const tool::RigidTool& t, double blank_position, const stroke::FormingZone& zone) {
    const bool carries =
        t.role == tool::Role::die || t.role == tool::Role::pad || t.role == tool::Role::clamp;
    const double rest = carries ? 0.5 * (t.outline.box().high.x() - t.outline.box().low.x()) : 0.0;
    return blank_position > zone.low - rest && blank_position < zone.high + rest;
}

void look_at(const stroke::Recording& r, int state, double blank_position, const Eigen::Vector2d& at,
             const stroke::FormingZone& zone, Closest& least) {
    for (int k = 0; k < static_cast<int>(r.tools.size()); ++k) {
        const tool::RigidTool& t = r.tools[k];
        if (belongs(t, blank_position, zone)) continue;
        const Eigen::Vector2d local = at - stroke::tool_position(r.tools, k, r.states[state]);
        const tool::Box& box = t.outline.box();
        const double dx = std::max({box.low.x() - local.x(), 0.0, local.x() - box.high.x()});
        const double dy = std::max({box.low.y() - local.y(), 0.0, local.y() - box.high.y()});
        const double to_box = std::hypot(dx, dy);
        if (to_box > 0.0 && to_box >= least.distance) continue;
        const double distance = tool::nearest(t.outline, local).distance;
        if (distance < least.distance) least = {distance, at, blank_position, k, state};
    }
}

}  // namespace

Closest least_distance(const stroke::Recording& r, int state, const stroke::FormingZone& zone) {
    Closest least;
    const stroke::State& s = r.states[state];
    for (std::size_t e = 0; e + 1 < r.blank_position.size(); ++e) {
        const double from = r.blank_position[e], to = r.blank_position[e + 1];
        const int pieces =
            std::max(1, static_cast<int>(std::ceil(std::abs(to - from) / (0.5 * r.thickness))));
        for (int i = 0; i <= pieces; ++i) {
            const double at = from + (to - from) * i / pieces;
            if (at > zone.low && at < zone.high) continue;
            const strip::MidPoint m = strip::mid_point(r.blank_position, s.x, s.y, s.theta, at);
            const Eigen::Vector2d middle(m.x, m.y), normal(-std::sin(m.theta), std::cos(m.theta));
            for (const double side : {0.5, -0.5})
                look_at(r, state, at, middle + side * r.thickness * normal, zone, least);
        }
    }
    return least;
}

std::vector<Closest> least_distances(const stroke::Recording& r, const stroke::FormingZone& zone) {
    std::vector<Closest> all;
    all.reserve(r.states.size());
    for (int i = 0; i < static_cast<int>(r.states.size()); ++i) all.push_back(least_distance(r, i, zone));
    return all;
}

}  // namespace overbend::clearance
