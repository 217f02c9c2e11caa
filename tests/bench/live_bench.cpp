// The springback bench while its punch is dragged: bends a second (down to the pointer's travel and all the
// way back to free) of one, two and four strips of 87 nodes; and results a second as they are shown, bent
// and painted on the bench's own thread.

#include <chrono>
#include <cmath>
#include <thread>

#include "scenes/window/bench/work.h"
#include "tests/bench/counters.h"

namespace overbend::bench {

namespace {

using window::BenchKind;
using window::BenchSetup;

BenchSetup setup_of(BenchKind kind, int strips) {
    BenchSetup setup;
    setup.kind = kind;
    const char* cards[] = {"dc01", "stainless-1.4310", "aluminium-6061-t6", "spring-steel-c75s-hardened"};
    for (int i = 0; i < strips; ++i) setup.metals.push_back(window::metal_of(cards[i]));
    return setup;
}

// A hand that goes down and up, a way of its own from bend to bend.
double hand(double limit, int bend) {
    return limit * (0.55 + 0.35 * std::sin(0.02 * bend));
}

void live_bend(benchmark::State& state, BenchKind kind) {
    window::BenchPress press(setup_of(kind, static_cast<int>(state.range(0))));
    const double limit = press.way_limit();
    int bend = 0;
    for (auto _ : state) press.bend_to(hand(limit, bend++));
    state.counters["bends/s"] = benchmark::Counter(1, benchmark::Counter::kIsIterationInvariantRate);
}
BENCHMARK_CAPTURE(live_bend, vee, BenchKind::vee)
    ->Arg(1)
    ->Arg(2)
    ->Arg(4)
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();
BENCHMARK_CAPTURE(live_bend, pure, BenchKind::pure)->Arg(1)->Unit(benchmark::kMillisecond)->UseRealTime();

void live_shown(benchmark::State& state) {
    window::BenchWork work;
    window::BenchRequest request;
    request.setup = setup_of(BenchKind::vee, static_cast<int>(state.range(0)));
    const double limit = deepest(request.setup);
    int bend = 0;
    double bent = 0.0, painted = 0.0;
    const auto next = [&] {
        request.moves = {{hand(limit, bend++)}};
        work.show(request);
        while (true) {
            if (const auto shown = work.take()) return *shown;
            std::this_thread::sleep_for(std::chrono::microseconds(100));
        }
    };
    next();
    for (auto _ : state) {
        const window::BenchShown shown = next();
        bent += shown.bend_seconds, painted += shown.paint_seconds;
    }
    state.counters["shown/s"] = benchmark::Counter(1, benchmark::Counter::kIsIterationInvariantRate);
    state.counters["bend_ms"] = benchmark::Counter(1e3 * bent, benchmark::Counter::kAvgIterations);
    state.counters["paint_ms"] = benchmark::Counter(1e3 * painted, benchmark::Counter::kAvgIterations);
}
BENCHMARK(live_shown)->Arg(1)->Arg(2)->Arg(4)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace

}  // namespace overbend::bench
