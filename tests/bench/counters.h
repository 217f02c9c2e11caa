// Counters of a benchmark, beside its time: how much was done a second.

#pragma once

#include <benchmark/benchmark.h>

#include "tests/bench/works.h"

namespace overbend::bench {

// Of one pass of the loop.
inline void count(benchmark::State& state, const Counts& c) {
    const auto rate = [&](const char* name, double of_one) {
        state.counters[name] = benchmark::Counter(of_one, benchmark::Counter::kIsIterationInvariantRate);
    };
    state.counters["increments"] = c.increments;
    state.counters["iterations"] = c.iterations;
    if (c.strokes > 0) rate("strokes/s", c.strokes);
    rate("increments/s", c.increments);
    rate("iterations/s", c.iterations);
    rate("layer_updates/s", c.layer_updates);
}

}  // namespace overbend::bench
