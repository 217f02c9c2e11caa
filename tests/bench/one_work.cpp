// One of the works, once, without a clock: what tests/bench/instructions counts.

#include <cstdio>
#include <cstring>

#include "tests/bench/works.h"

using namespace overbend;
using namespace overbend::bench;

namespace {

void section() {
    bend_section(11);
}
void order() {
    order_of(cranked(12));
}
void demo_strokes() {
    job::run_process(demo(), {});
}

struct Work {
    const char* name;
    void (*run)();
};
constexpr Work works[] = {{"nothing", [] {}}, {"section", section}, {"order", order}, {"demo", demo_strokes}};

}  // namespace

int main(int count, char** words) {
    for (const Work& work : works)
        if (count == 2 && std::strcmp(words[1], work.name) == 0) {
            work.run();
            return 0;
        }
    std::fputs("one_work: give one of nothing, section, order, demo\n", stderr);
    return 2;
}
