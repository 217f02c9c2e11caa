// Work for checks that is done on all cores.

#pragma once

#include <algorithm>
#include <atomic>
#include <thread>
#include <vector>

namespace overbend::tests {

// work(i) for i from 0 to count - 1, in any order; it must not throw.
template <class Work>
void on_all_cores(int count, const Work& work) {
    std::atomic<int> next{0};
    std::vector<std::thread> workers;
    for (unsigned w = 0; w < std::max(1u, std::thread::hardware_concurrency()); ++w)
        workers.emplace_back([&] {
            for (int i = next++; i < count; i = next++) work(i);
        });
    for (std::thread& w : workers) w.join();
}

}  // namespace overbend::tests
