// Planning: the exact order of 12 bends by rule, and the whole plan of a part of 8 bends.

#include "scenes/job/plan/plan.h"
#include "tests/bench/counters.h"

namespace overbend::bench {

namespace {

void order_of_12_bends(benchmark::State& state) {
    const files::Case c = cranked(12);
    std::unique_ptr<job::Attempt> attempt;
    for (auto _ : state) attempt = order_of(c);
    state.counters["orders"] = static_cast<double>(attempt->search.best.size());
    state.counters["sets"] = attempt->search.sets;
    state.counters["asked"] = static_cast<double>(attempt->search.asked);
}
BENCHMARK(order_of_12_bends)->Unit(benchmark::kMillisecond)->UseRealTime();

void plan_of_8_bends(benchmark::State& state) {
    const files::Case c = cranked(8);
    job::PlanResult plan;
    for (auto _ : state) plan = job::plan_case(c, {});
    state.counters["found"] = plan.found;
    state.counters["runs"] = plan.fit.runs;
    state.counters["asked"] = static_cast<double>(plan.asked);
}
BENCHMARK(plan_of_8_bends)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace

}  // namespace overbend::bench
