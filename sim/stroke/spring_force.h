// The force of a spring behind a pad or a clamp, with its stops.
//
// At compression c the tool is pressed with  preload + rate c  from its own stop at c = low up to c = solid;
// past either the stop takes over with `stiffness`, smooth over +-soft.
//
// Units  mm, N per mm of strip width; stiffness N/mm per mm of width.

#pragma once

#include <vector>

#include "sim/stroke/equations.h"
#include "sim/tool/spring.h"

namespace overbend::stroke {

struct SpringStops {
    double low = 0.0;  // compression at the tool's own stop
    double stiffness = 0.0;
    double soft = 0.0;
};

struct SpringForce {
    double value = 0.0;   // N per mm, towards the strip; the gradient of the energy by c
    double slope = 0.0;   // d value / dc
    double energy = 0.0;  // N, 0 at c = 0 but for the stops' share
};
// load_fraction: how much of preload and rate is on, 0 to 1; the stops always are.
SpringForce spring_force(const tool::Spring& spring, const SpringStops& stops, double load_fraction,
                         double c);

// A spring among the unknowns.
struct SpringUnknown {
    const tool::Spring* spring = nullptr;
    SpringStops stops;
    double load_fraction = 1.0;
};
struct SpringSum {
    double stored = 0.0;  // in the springs, N
    double hold = 0.0;    // in what resists the moves of their tools, N
};
// The springs' term of an increment's energy: their own energy alone; what the strip does to them comes with
// the contacts. hold: stiffness that resists a compression's change in the increment, N/mm per mm. before, u:
// unknowns at the increment's start and now.
SpringSum add_springs(const std::vector<SpringUnknown>& springs, double hold,
                      const std::vector<double>& before, const std::vector<double>& u, Equations& to);

// The compression at which nothing presses on the tool: a little below its stop.
double rest_compression(const tool::Spring& spring, const SpringStops& stops);

}  // namespace overbend::stroke
