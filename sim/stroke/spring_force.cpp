#include "sim/stroke/spring_force.h"

#include <algorithm>

namespace overbend::stroke {

namespace {

// Force of a stop that is entered by `in` (> 0), with slope and integral.
SpringForce stop_force(const SpringStops& stops, double in) {
    SpringForce f;
    if (in <= -stops.soft) return f;
    const double k = stops.stiffness, soft = stops.soft;
    if (in < soft) {
        const double s = in + soft;
        f.value = k * s * s / (4.0 * soft);
        f.slope = k * s / (2.0 * soft);
        f.energy = k * s * s * s / (12.0 * soft);
        return f;
    }
    f.value = k * in;
    f.slope = k;
    f.energy = k * (0.5 * in * in + soft * soft / 6.0);
    return f;
}

}  // namespace

SpringForce spring_force(const tool::Spring& spring, const SpringStops& stops, double load_fraction,
                         double c) {
    const SpringForce low = stop_force(stops, stops.low - c), high = stop_force(stops, c - spring.solid);
    SpringForce f;
    f.value = load_fraction * (spring.preload + spring.rate * c) - low.value + high.value;
    f.slope = load_fraction * spring.rate + low.slope + high.slope;
    f.energy = load_fraction * (spring.preload + 0.5 * spring.rate * c) * c + low.energy + high.energy;
    return f;
}

SpringSum add_springs(const std::vector<SpringUnknown>& springs, double hold,
                      const std::vector<double>& before, const std::vector<double>& u, Equations& to) {
    SpringSum sum;
    for (int i = 0; i < static_cast<int>(springs.size()); ++i) {
        const SpringUnknown& s = springs[i];
        const int at = to.of_spring(i);
        const SpringForce f = spring_force(*s.spring, s.stops, s.load_fraction, u[at]);
        const double moved = u[at] - before[at];
        sum.stored += f.energy;
        sum.hold += 0.5 * hold * moved * moved;
        to.gradient[at] += f.value;
        to.gradient[at] += hold * moved;
        to.border.corner(i, i) += f.slope + hold;
    }
    return sum;
}

double rest_compression(const tool::Spring& spring, const SpringStops& stops) {
    // The force rises with c, from below its root without a jump.
    double c =
        stops.low - (spring.preload + spring.rate * std::max(stops.low, 0.0)) / stops.stiffness - stops.soft;
    for (int i = 0; i < 60; ++i) {
        const SpringForce f = spring_force(spring, stops, 1.0, c);
        if (!(f.slope > 0.0)) break;
        c -= f.value / f.slope;
    }
    return c;
}

}  // namespace overbend::stroke
