// Findings in the window: each with the step, the state and the place in the press where it is seen.

#include <doctest/doctest.h>

#include <algorithm>
#include <atomic>

#include "scenes/files/case/read_case.h"
#include "scenes/window/panels/findings_panel.h"
#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"

using namespace overbend;

namespace {

window::RanJob run(const std::filesystem::path& file) {
    const std::atomic<bool> cancelled{false};
    window::RunProgress progress;
    return window::run_job(files::read_case(file), window::Wanted(cancelled), progress);
}

job::Findings of_rule(const window::RanJob& job, Rule rule) {
    return job::those(job.result.findings, [&](const Finding& f) { return f.rule == rule; });
}

}  // namespace

TEST_CASE("an interference has the state and the place where it is deepest") {
    const window::RanJob job = run("cases/wrong-order/case.toml");
    const job::Findings hits = of_rule(job, Rule::interference);
    std::size_t seen = 0;
    for (std::size_t i = 0; i < job.result.steps.size(); ++i)
        for (const job::Interference& hit : job.result.steps[i].interferences) {
            REQUIRE(seen < hits.size());
            const std::optional<FindingPlace> place = seen_at(job, hits[seen++]);
            REQUIRE(place);
            CHECK(place->step == static_cast<int>(i));
            CHECK(place->state == hit.deepest.state);
            CHECK((*place->at - hit.deepest.at).norm() == 0.0);
        }
    CHECK(seen > 0);
    CHECK(seen == hits.size());
}

TEST_CASE("an angle out of tolerance is shown when the strip is free of the last step on its bend") {
    const tests::OwnFolder folder;
    const std::string text =
        tests::replaced(tests::small_case, "stop = { free_deg = 60.0 }", "stop = { free_deg = 50.0 }");
    const window::RanJob job = run(folder.write("case.toml", text));
    const job::Findings off = of_rule(job, Rule::finished_angle);
    REQUIRE(off.size() == 1);
    CHECK(job::sentence(job.c, off[0]).rfind("bend 'heel': 50.00 degrees instead of 60.00", 0) == 0);
    const std::optional<FindingPlace> place = seen_at(job, off[0]);
    REQUIRE(place);
    CHECK(place->step == 0);
    CHECK(place->state == static_cast<int>(job.result.steps[0].stroke.recording.states.size()) - 1);
    CHECK(place->at);
}

TEST_CASE("a job that was not solved says so, and what is of the whole job has no place") {
    const tests::OwnFolder folder;
    const window::RanJob job = run(folder.write("case.toml", tests::unsolvable_case()));
    CHECK(job::stops(job.result.findings));
    for (const Finding& f : job.result.findings)
        CHECK(seen_at(job, f).has_value() == (f.place.step >= 0 && f.place.state >= 0));
    CHECK_FALSE(seen_at(job, Finding{Severity::not_checked, Rule::press}));
}

TEST_CASE("every finding is said once") {
    for (const char* file : {"cases/wrong-order/case.toml", "cases/cable-hook/case.toml"}) {
        const window::RanJob job = run(file);
        std::vector<std::string> said = job::sentences(job.c, job.result.findings);
        std::sort(said.begin(), said.end());
        CHECK(std::adjacent_find(said.begin(), said.end()) == said.end());
    }
}
