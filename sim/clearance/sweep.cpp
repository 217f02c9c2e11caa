#include "sim/clearance/sweep.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "sim/clearance/pieces.h"

namespace overbend::clearance {

namespace {

constexpr double finest = 0.05;  // of the thickness: a way shorter than that is not halved any more

// A piece and a tool at an instant.
struct Instant {
    Convex piece;
    Vec2 tool = Vec2::Zero();
};

Instant halfway(const Instant& a, const Instant& b) {
    Instant m;
    m.piece = a.piece;
    for (std::size_t i = 0; i < a.piece.corners.size(); ++i)
        m.piece.corners[i] = 0.5 * (a.piece.corners[i] + b.piece.corners[i]);
    m.tool = 0.5 * (a.tool + b.tool);
    return m;
}

// How far any of the piece moves against the tool; no point of a piece moves further than a corner.
double way_between(const Instant& a, const Instant& b) {
    double most = 0.0;
    for (std::size_t i = 0; i < a.piece.corners.size(); ++i)
        most = std::max(most, ((b.piece.corners[i] - b.tool) - (a.piece.corners[i] - a.tool)).norm());
    return most;
}

struct Hit {
    Gap gap;
    double share = 0.0;  // of the way
};

// a and b are clear of the solid.
std::optional<Hit> hit_between(const Solid& solid, const Instant& a, const Instant& b, double from, double to,
                               double shortest) {
    const double way = way_between(a, b);
    if (way <= shortest) return std::nullopt;
    const double before = gap(solid, a.tool, a.piece, way).distance;
    if (before > way) return std::nullopt;
    const double after = gap(solid, b.tool, b.piece, way).distance;
    if (after > way || before + after > way) return std::nullopt;
    const Instant m = halfway(a, b);
    const double share = 0.5 * (from + to);
    const Gap here = gap(solid, m.tool, m.piece, way);
    if (here.distance < 0.0) return Hit{here, share};
    if (const std::optional<Hit> first = hit_between(solid, a, m, from, share, shortest)) return first;
    return hit_between(solid, m, b, share, to, shortest);
}

}  // namespace

std::vector<Closest> hits_between(const Surroundings& all, const stroke::FormingZone& zone) {
    const stroke::Recording& r = all.recording();
    std::vector<Closest> hits;
    for (int i = 0; i + 1 < static_cast<int>(r.states.size()); ++i) {
        for (const Span& span : spans_outside(r, {i, i + 1}, zone)) {
            Instant a{piece_of(r, i, span), {}}, b{piece_of(r, i + 1, span), {}};
            for (int k = 0; k < all.count(); ++k) {
                if (may_touch(r.tools[k], 0.5 * (span.left + span.right), zone)) continue;
                a.tool = stroke::tool_position(r.tools, k, r.states[i]);
                b.tool = stroke::tool_position(r.tools, k, r.states[i + 1]);
                // the states themselves are looked at elsewhere
                if (gap(all.solid(k), a.tool, a.piece, 0.0).distance <= 0.0 ||
                    gap(all.solid(k), b.tool, b.piece, 0.0).distance <= 0.0)
                    continue;
                const std::optional<Hit> hit =
                    hit_between(all.solid(k), a, b, 0.0, 1.0, finest * r.thickness);
                if (!hit) continue;
                const double travel =
                    r.states[i].travel + hit->share * (r.states[i + 1].travel - r.states[i].travel);
                hits.push_back({hit->gap.distance, hit->gap.on_strip, hit->gap.on_solid,
                                0.5 * (span.left + span.right), k, i + 1, travel});
            }
        }
    }
    return hits;
}

}  // namespace overbend::clearance
