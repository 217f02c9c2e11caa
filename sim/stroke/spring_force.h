// The force of a spring behind a pad or a clamp, with its stops.
//
// At compression c the tool is pressed with  preload + rate c  from its own stop at c = low up to c = solid;
// past either the stop takes over with `stiffness`, smooth over +-soft.
//
// Units  mm, N per mm of strip width; stiffness N/mm per mm of width.

#pragma once

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

// The compression at which nothing presses on the tool: a little below its stop.
double rest_compression(const tool::Spring& spring, const SpringStops& stops);

}  // namespace overbend::stroke
