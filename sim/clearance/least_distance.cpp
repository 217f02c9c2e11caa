#include "sim/clearance/least_distance.h"

#include <algorithm>
#include <cmath>

#include "sim/clearance/pieces.h"

namespace overbend::clearance {

namespace {

bool carries(tool::Role role) {
    return role == tool::Role::die || role == tool::Role::pad || role == tool::Role::clamp;
}

}  // namespace

Surroundings::Surroundings(const stroke::Recording& recording) : recording_(&recording) {
    for (const tool::RigidTool& t : recording.tools) solids_.emplace_back(t.outline);
}

bool may_touch(const tool::RigidTool& t, double blank_position, const stroke::FormingZone& zone) {
    if (t.role == tool::Role::gauge) return true;
    if (!carries(t.role)) return false;
    const double rest = 0.5 * (t.outline.box().high.x() - t.outline.box().low.x());
    return blank_position > zone.low - rest && blank_position < zone.high + rest;
}

Closest least_distance(const Surroundings& all, int state, const stroke::FormingZone& zone) {
    const stroke::Recording& r = all.recording();
    Closest least;
    for (const Span& span : spans_outside(r, {state}, zone)) {
        const Convex piece = piece_of(r, state, span);
        for (int k = 0; k < all.count(); ++k) {
            const Vec2 position = stroke::tool_position(r.tools, k, r.states[state]);
            const Gap found =
                gap(all.solid(k), position, piece, std::max(0.0, std::min(least.distance, 1e6)));
            if (found.distance >= least.distance) continue;
            const double at = blank_position_of(span, piece, found.on_strip);
            if (may_touch(r.tools[k], at, zone) && found.distance > -deep_enough * r.thickness) continue;
            least = {found.distance, found.on_strip, found.on_solid, at, k, state, r.states[state].travel};
        }
    }
    return least;
}

std::vector<Closest> least_distances(const Surroundings& all, const stroke::FormingZone& zone) {
    std::vector<Closest> found;
    const int states = static_cast<int>(all.recording().states.size());
    found.reserve(states);
    for (int i = 0; i < states; ++i) found.push_back(least_distance(all, i, zone));
    return found;
}

}  // namespace overbend::clearance
