// What the kernel costs: one V bend of some 85 nodes and 11 layers to 90 degrees free, and the demo's six
// strokes without pictures. Counts first, which do not depend on the machine; then the least of several
// times.

#include <algorithm>
#include <chrono>
#include <cstdio>

#include "scenes/case/read_card.h"
#include "scenes/case/read_case.h"
#include "scenes/process/process.h"
#include "scenes/process/vee_bend.h"

using namespace overbend;

namespace {

template <class Work>
double least_ms(int times, Work work) {
    double least = 1e300;
    for (int i = 0; i < times; ++i) {
        const auto begin = std::chrono::steady_clock::now();
        work();
        least = std::min(
            least,
            std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begin).count());
    }
    return least;
}

}  // namespace

int main() {
    scenes::VeeBend bend;
    bend.material = scenes::read_card("dc01", ".");
    bend.layers = 11;
    bend.elements_per_thickness = 10.0;
    stroke::Stop stop{stroke::StopKind::free_angle, 1.5707963267948966};
    scenes::VeeResult vee;
    const double vee_ms = least_ms(7, [&] { vee = scenes::bend_vee(bend, stop, {}); });
    std::printf("V bend: %d nodes, %d increments, %d iterations, %.1f ms\n", vee.stroke.free.nodes(),
                vee.stroke.increments, vee.stroke.iterations, vee_ms);

    const scenes::Case c = scenes::read_case("cases/cable-hook/case.toml");
    scenes::JobResult job;
    const double job_ms = least_ms(3, [&] { job = scenes::run_process(c, {}); });
    int increments = 0, iterations = 0;
    for (const scenes::StepResult& s : job.steps)
        increments += s.stroke.increments, iterations += s.stroke.iterations;
    std::printf("demo: %d nodes, %zu strokes, %d increments, %d iterations, %.0f ms\n",
                job.steps.front().stroke.free.nodes(), job.steps.size(), increments, iterations, job_ms);
    return job.solved ? 0 : 1;
}
