#include "render/picture/bend_mark.h"

#include <algorithm>
#include <cmath>

namespace overbend::picture {

namespace {

using stroke::Recording;
using stroke::State;

// Position on the blank of the node nearest to a place.
double blank_position_near(const Recording& recording, const State& state, const Place& place) {
    size_t best = 0;
    double least = 1e300;
    for (size_t i = 0; i < state.x.size(); ++i) {
        const double distance = (Place(state.x[i], state.y[i]) - place).squaredNorm();
        if (distance >= least) continue;
        least = distance;
        best = i;
    }
    return recording.blank_position[best];
}

double farthest_contact(const Recording& recording, double bend_line, double limit) {
    double reach = 0.0;
    for (const State& state : recording.states)
        for (const stroke::ContactForce& c : state.contacts) {
            const double away = std::abs(blank_position_near(recording, state, c.at) - bend_line);
            if (away <= limit) reach = std::max(reach, away);
        }
    return reach;
}

}  // namespace

double found_reach(const Recording& recording, const std::vector<BendMark>& bends, int index) {
    const double bend_line = bends[index].blank_position;
    const auto [low, high] = std::minmax(recording.blank_position.front(), recording.blank_position.back());
    double limit = std::max(recording.thickness, std::min(bend_line - low, high - bend_line));
    for (int i = 0; i < static_cast<int>(bends.size()); ++i)
        if (i != index) limit = std::min(limit, 0.5 * std::abs(bends[i].blank_position - bend_line));
    const double touched = farthest_contact(recording, bend_line, limit);
    const double wanted = touched > 0.0 ? touched + 1.5 * recording.thickness : 8.0 * recording.thickness;
    return std::min(wanted, limit);
}

MeasuredBend measured(const Recording& recording, const State& state, const BendMark& bend) {
    const bool turned = recording.blank_position.back() < recording.blank_position.front();
    MeasuredBend m;
    m.left = spot_on(recording, state, turned ? bend.to() : bend.from());
    m.right = spot_on(recording, state, turned ? bend.from() : bend.to());
    m.angle = m.right.theta - m.left.theta;
    m.corner = spot_on(recording, state, bend.blank_position).at;
    // left + a (cos, sin)(theta left) = right - b (cos, sin)(theta right), solved for a.
    const double sine = std::sin(m.angle);
    // Where the flats lie nearly along one another they cross far away, or nowhere.
    if (std::abs(sine) > 0.02 && std::abs(m.angle) < 2.6) {
        const Place across = m.right.at - m.left.at;
        const Place direction(std::cos(m.right.theta), std::sin(m.right.theta));
        const double a = (across.x() * direction.y() - across.y() * direction.x()) / sine;
        m.corner = m.left.at + a * Place(std::cos(m.left.theta), std::sin(m.left.theta));
    }
    return m;
}

}  // namespace overbend::picture
