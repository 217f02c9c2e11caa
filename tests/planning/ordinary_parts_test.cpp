// How many ordinary parts the planner plans, with no tools given: a table by the number of bends, and what it
// never may do.
//
// Here    5 parts from a seed that is printed; OVERBEND_PARTS_COUNT and OVERBEND_PARTS_SEED give others: 300
//         by hand. OVERBEND_PARTS_FOLDER: what was not planned is written there as cases.
// Checked `check` accepts what `plan` says meets the drawing; a refusal has its reasons.

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "scenes/files/case/write_case.h"
#include "scenes/job/plan/plan.h"
#include "scenes/job/shop/shop.h"
#include "tests/planning/ordinary_part.h"

using namespace overbend;
using namespace overbend::job;

namespace {

int number_from(const char* name, int otherwise) {
    const char* text = std::getenv(name);
    return text != nullptr ? std::atoi(text) : otherwise;
}

struct Planned {
    int bends = 0;
    enum class Outcome { met, not_met, refused } outcome = Outcome::refused;
    double seconds = 0.0;  // of the clock
    std::string why;
};

void keep(const files::Case& c, int number, const std::string& why) {
    const char* folder = std::getenv("OVERBEND_PARTS_FOLDER");
    if (folder == nullptr) return;
    std::filesystem::create_directories(folder);
    std::ofstream(std::filesystem::path(folder) / (std::to_string(number) + ".toml"))
        << files::write_case(c, why + "\n");
}

Planned plan_part(const files::Case& c, int number) {
    Planned planned;
    planned.bends = static_cast<int>(c.part.bends.size());
    const auto begin = std::chrono::steady_clock::now();
    const PlanResult result = plan_case(c, {});
    planned.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
    if (result.found) {
        const bool met = result.fit.meets;
        planned.outcome = met ? Planned::Outcome::met : Planned::Outcome::not_met;
        if (!met && !result.fit.why_not.empty()) planned.why = result.fit.why_not.front();
        // What check says of it.
        const JobResult checked = judge_job(result.planned, {}).result;
        CHECK_MESSAGE(checked.feasible() == met, verdict_words(checked));
    } else {
        REQUIRE_FALSE(result.reasons.empty());
        planned.why = result.reasons.front();
    }
    if (planned.outcome != Planned::Outcome::met) keep(c, number, planned.why);
    return planned;
}

double part_of(std::vector<double> values, double share) {
    if (values.empty()) return 0.0;
    std::sort(values.begin(), values.end());
    return values[std::min(values.size() - 1,
                           static_cast<std::size_t>(share * static_cast<double>(values.size())))];
}

}  // namespace

TEST_CASE("ordinary parts are planned, and check agrees with the plan") {
    const int count = number_from("OVERBEND_PARTS_COUNT", 5), seed = number_from("OVERBEND_PARTS_SEED", 1);
    std::printf("%d ordinary parts, seed %d\n", count, seed);
    std::vector<Planned> all;
    for (int i = 0; i < count; ++i) {
        const files::Case c =
            tests::ordinary_part(static_cast<std::uint64_t>(seed) * 1000000u + i, 1 + i % 8);
        CAPTURE(i);
        all.push_back(plan_part(c, i));
        const Planned& p = all.back();
        constexpr std::array<const char*, 3> words = {"met", "not met", "refused"};
        std::printf("  %3d: %d bends, %s, %.1f s  %s\n", i, p.bends, words[static_cast<int>(p.outcome)],
                    p.seconds, p.why.c_str());
        std::fflush(stdout);
    }
    std::printf("  bends  parts  met  not met  refused  seconds: median  ninetieth\n");
    for (const auto& [low, high] : {std::pair(1, 1), {2, 2}, {3, 3}, {4, 5}, {6, 8}, {1, 8}}) {
        std::array<int, 3> counts = {};
        std::vector<double> seconds;
        for (const Planned& p : all) {
            if (p.bends < low || p.bends > high) continue;
            ++counts[static_cast<int>(p.outcome)];
            seconds.push_back(p.seconds);
        }
        std::printf("  %d to %d %6zu %4d %8d %8d %16.1f %10.1f\n", low, high, seconds.size(), counts[0],
                    counts[1], counts[2], part_of(seconds, 0.5), part_of(seconds, 0.9));
    }
}
