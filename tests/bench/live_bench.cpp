// What the springback bench costs while its punch is dragged: bends a second (down to the pointer's travel
// and all the way back to free) of one, two and four strips of 87 nodes; and results a second as they are
// shown, bent and painted on the bench's own thread.

#include <chrono>
#include <cmath>
#include <cstdio>
#include <thread>

#include "scenes/window/bench/work.h"

using namespace overbend;
using namespace overbend::job;
using namespace overbend::window;

namespace {

using Clock = std::chrono::steady_clock;

double seconds_since(Clock::time_point begin) {
    return std::chrono::duration<double>(Clock::now() - begin).count();
}

// A hand that goes down and up.
double hand(double limit, double seconds) {
    return limit * (0.55 + 0.35 * std::sin(2.0 * seconds));
}

void bends(const BenchSetup& setup) {
    BenchPress press(setup);
    const double limit = press.way_limit();
    const auto begin = Clock::now();
    int count = 0;
    while (seconds_since(begin) < 3.0) press.bend_to(hand(limit, seconds_since(begin))), ++count;
    std::printf(", %.0f bends per second", count / seconds_since(begin));
}

void shown(const BenchSetup& setup) {
    BenchWork work;
    BenchRequest request;
    request.setup = setup;
    request.way = 0.5 * deepest(setup);
    work.show(request);
    while (!work.take()) std::this_thread::sleep_for(std::chrono::milliseconds(1));
    int count = 0;
    double bent = 0.0, painted = 0.0;
    const auto begin = Clock::now();
    while (seconds_since(begin) < 3.0) {
        if (!work.busy()) {
            request.way = hand(deepest(setup), seconds_since(begin));
            work.show(request);
        }
        if (const auto result = work.take())
            ++count, bent += result->bend_seconds, painted += result->paint_seconds;
        std::this_thread::sleep_for(std::chrono::microseconds(300));
    }
    std::printf(", %.0f shown a second (%.1f ms to bend, %.1f ms to paint)\n", count / seconds_since(begin),
                1e3 * bent / count, 1e3 * painted / count);
}

}  // namespace

int main() {
    for (const BenchKind kind : {BenchKind::vee, BenchKind::pure})
        for (const int strips : {1, 2, 4}) {
            BenchSetup setup;
            setup.kind = kind;
            const char* cards[] = {"dc01", "stainless-1.4310", "aluminium-6061-t6",
                                   "spring-steel-c75s-hardened"};
            for (int i = 0; i < strips; ++i) setup.metals.push_back(metal_of(cards[i]));
            std::printf("%s, %d strip%s", kind == BenchKind::vee ? "V bend" : "pure bending", strips,
                        strips > 1 ? "s" : "");
            bends(setup);
            shown(setup);
        }
    return 0;
}
