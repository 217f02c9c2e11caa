#include "render/picture/drawn_springback.h"

#include <algorithm>
#include <cmath>

#include "sim/tool/signed_distance.h"

namespace overbend::picture {

namespace {

using stroke::Recording;
using stroke::State;

Place node(const State& s, size_t i) {
    return Place(s.x[i], s.y[i]);
}

void set_node(State& s, size_t i, const Place& p) {
    s.x[i] = p.x();
    s.y[i] = p.y();
}

Place turned(const Place& p, double angle) {
    return Place(std::cos(angle) * p.x() - std::sin(angle) * p.y(),
                 std::sin(angle) * p.x() + std::cos(angle) * p.y());
}

size_t nearest_node(const State& s, const Place& p) {
    size_t best = 0;
    for (size_t i = 1; i < s.x.size(); ++i)
        if ((node(s, i) - p).squaredNorm() < (node(s, best) - p).squaredNorm()) best = i;
    return best;
}

// How deep the strip's lower surface lies in what stands still, mm.
double depth_in_tools(const Recording& recording, const State& s) {
    double depth = 0.0;
    for (size_t k = 0; k < recording.tools.size(); ++k) {
        const tool::RigidTool& t = recording.tools[k];
        if (t.role != tool::Role::die && t.role != tool::Role::pad) continue;
        const Place position = stroke::tool_position(recording.tools, static_cast<int>(k), s);
        for (size_t i = 0; i < s.x.size(); ++i) {
            const Place surface =
                node(s, i) - 0.5 * recording.thickness * Place(-std::sin(s.theta[i]), std::cos(s.theta[i]));
            depth = std::max(depth, -tool::nearest(t.outline, surface - position).distance);
        }
    }
    return depth;
}

}  // namespace

State with_larger_springback(const Recording& recording, const State& from, const State& to, double scale,
                             double anchor) {
    if (scale == 1.0) return to;
    State drawn = to;
    const size_t nodes = to.x.size();
    const size_t at = std::min(nodes - 1, static_cast<size_t>(std::lround(along_at(recording, anchor))));
    const double whole_turn = to.theta[at] - from.theta[at];
    // What is added to the turn of a node, and to its element.
    const auto added = [&](size_t i) { return (scale - 1.0) * (to.theta[i] - from.theta[i] - whole_turn); };
    const auto element = [&](size_t e) {
        return turned(node(to, e + 1) - node(to, e), 0.5 * (added(e) + added(e + 1)));
    };
    for (size_t i = 0; i < nodes; ++i) drawn.theta[i] = to.theta[i] + added(i);
    for (size_t e = 0; e + 1 < nodes; ++e)
        drawn.curvature[e] = to.curvature[e] + (scale - 1.0) * (to.curvature[e] - from.curvature[e]);
    for (size_t e = at; e + 1 < nodes; ++e) set_node(drawn, e + 1, node(drawn, e) + element(e));
    for (size_t e = at; e-- > 0;) set_node(drawn, e, node(drawn, e + 1) - element(e));

    // Where flanges lie on the die, opening them further turns them into it. A strip that walls hold is not
    // set up by more than its thickness: it lies in the walls then.
    const double sunk = depth_in_tools(recording, drawn) - depth_in_tools(recording, to);
    const double up = std::min(std::max(0.0, sunk), recording.thickness);
    for (double& y : drawn.y) y += up;

    for (stroke::ContactForce& c : drawn.contacts) {
        const size_t i = nearest_node(to, c.at);
        c.at = node(drawn, i) + turned(c.at - node(to, i), added(i));
    }
    return drawn;
}

}  // namespace overbend::picture
