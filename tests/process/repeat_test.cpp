// The same case gives the same bytes, alone, again, or beside another job in the same process: no job leaves
// anything behind for the next one, or reaches into one that runs at the same time.

#include <doctest/doctest.h>

#include <future>
#include <string>
#include <utility>

#include "scenes/documents/results/results_json.h"
#include "scenes/files/case/read_case.h"
#include "scenes/job/run/process.h"

using namespace overbend::documents;
using namespace overbend::files;
using namespace overbend::job;

namespace {

// With a mesh so coarse that a job takes a part of a second.
std::string run_coarse(const std::string& name) {
    Case c = read_case("cases/" + name + "/case.toml");
    c.run.elements_per_thickness = 1.0;
    c.run.layers = 7;
    return results_json(c, run_process(c, {}));
}

struct Pair {
    std::string first, second;
};

// Both at the same time, each in a thread of its own.
Pair run_both(const std::string& first, const std::string& second) {
    std::future<std::string> other = std::async(std::launch::async, run_coarse, second);
    std::string here = run_coarse(first);
    return {std::move(here), other.get()};
}

}  // namespace

TEST_CASE("a job gives the same bytes alone, again and beside another") {
    const std::string hook = run_coarse("cable-hook"), wrong = run_coarse("wrong-order");
    CHECK(hook.size() > 10000);
    CHECK(wrong.size() > 10000);
    CHECK(run_coarse("cable-hook") == hook);

    const Pair same = run_both("cable-hook", "cable-hook");
    CHECK(same.first == hook);
    CHECK(same.second == hook);
    const Pair different = run_both("wrong-order", "cable-hook");
    CHECK(different.first == wrong);
    CHECK(different.second == hook);
}
