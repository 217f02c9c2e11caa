// The mechanics: a section, an increment, a V stroke, the demo's six strokes, and what is clear of what.

#include <algorithm>

#include "sim/clearance/sweep.h"
#include "tests/bench/counters.h"

namespace overbend::bench {

namespace {

void section(benchmark::State& state) {
    const int layers = static_cast<int>(state.range(0));
    for (auto _ : state) benchmark::DoNotOptimize(bend_section(layers));
}
BENCHMARK(section)->Arg(11)->Arg(31)->Unit(benchmark::kMicrosecond);

void increment(benchmark::State& state) {
    Increment work;
    for (auto _ : state) benchmark::DoNotOptimize(work.step());
    Counts c;
    c.increments = 1;
    c.iterations = work.step().iterations - work.before().iterations;
    c.layer_updates = c.iterations * work.layers();
    count(state, c);
}
BENCHMARK(increment)->Unit(benchmark::kMicrosecond);

void vee_stroke(benchmark::State& state, const stroke::Stop& stop) {
    const job::VeeBend bend = vee();
    job::VeeResult result;
    for (auto _ : state) result = job::bend_vee(bend, stop, {});
    count(state, counts_of(result.stroke));
}
BENCHMARK_CAPTURE(vee_stroke, to_90_degrees_free, to_right_angle())->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(vee_stroke, to_travel_2_3, to_travel(2.3))->Unit(benchmark::kMillisecond);

void demo_strokes(benchmark::State& state) {
    const files::Case c = demo();
    job::JobResult result;
    for (auto _ : state) result = job::run_process(c, {});
    count(state, counts_of(result));
}
BENCHMARK(demo_strokes)->Unit(benchmark::kMillisecond);

// All states of the demo's strokes, and the ways between them; the strip is pressed 6 mm either side of the
// bends that are made.
void clearance_of_demo(benchmark::State& state) {
    const files::Case c = demo();
    const job::JobResult result = job::run_process(c, {});
    double states = 0;
    for (auto _ : state) {
        states = 0;
        for (std::size_t i = 0; i < result.steps.size(); ++i) {
            const stroke::Recording& r = result.steps[i].stroke.recording;
            stroke::FormingZone zone{1e300, -1e300};
            for (const int b : c.steps[i].bends) {
                zone.low = std::min(zone.low, result.blank.bend_line[b] - 6.0);
                zone.high = std::max(zone.high, result.blank.bend_line[b] + 6.0);
            }
            const clearance::Surroundings all(r);
            benchmark::DoNotOptimize(clearance::least_distances(all, zone));
            benchmark::DoNotOptimize(clearance::hits_between(all, zone));
            states += static_cast<double>(r.states.size());
        }
    }
    state.counters["states/s"] = benchmark::Counter(states, benchmark::Counter::kIsIterationInvariantRate);
}
BENCHMARK(clearance_of_demo)->Unit(benchmark::kMillisecond);

}  // namespace

}  // namespace overbend::bench
