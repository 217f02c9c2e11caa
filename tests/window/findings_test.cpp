// What is to be said about a job, with its instants and places.

#include <doctest/doctest.h>

#include <algorithm>
#include <atomic>

#include "scenes/files/case/read_case.h"
#include "scenes/window/panels/findings.h"
#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"

using namespace overbend;
using window::Finding;
using window::FindingWeight;

namespace {

window::RanJob run(const std::filesystem::path& file) {
    const std::atomic<bool> cancelled{false};
    window::RunProgress progress;
    return window::run_job(files::read_case(file), window::Wanted(cancelled), progress);
}

bool is_among(const std::vector<Finding>& all, const std::string& words) {
    return std::any_of(all.begin(), all.end(), [&](const Finding& f) {
        return f.words == words && f.weight == FindingWeight::against;
    });
}

}  // namespace

TEST_CASE("an interference has the state and the place where it is deepest") {
    const window::RanJob job = run("cases/wrong-order/case.toml");
    const std::vector<Finding> all = window::findings_of(job);
    for (const std::string& f : job.result.findings) CHECK_MESSAGE(is_among(all, f), f);
    int seen = 0;
    for (std::size_t i = 0; i < job.result.steps.size(); ++i)
        for (const job::Interference& hit : job.result.steps[i].interferences)
            for (const Finding& f : all)
                if (f.words.find(hit.words) != std::string::npos) {
                    ++seen;
                    REQUIRE(f.place);
                    CHECK(f.place->step == static_cast<int>(i));
                    CHECK(f.place->state == hit.deepest.state);
                    CHECK((*f.place->at - hit.deepest.at).norm() == 0.0);
                }
    CHECK(seen > 0);
    CHECK(std::is_sorted(all.begin(), all.end(),
                         [](const Finding& a, const Finding& b) { return a.weight < b.weight; }));
}

TEST_CASE("an angle out of tolerance is shown when the strip is free of the last step on its bend") {
    const tests::OwnFolder folder;
    const std::string text =
        tests::replaced(tests::small_case, "stop = { free_deg = 60.0 }", "stop = { free_deg = 50.0 }");
    const window::RanJob job = run(folder.write("case.toml", text));
    const std::vector<Finding> all = window::findings_of(job);
    const auto found = std::find_if(all.begin(), all.end(), [](const Finding& f) {
        return f.words.find("bend 'heel': ") == 0 && f.words.find("instead of") != std::string::npos;
    });
    REQUIRE(found != all.end());
    REQUIRE(found->place);
    CHECK(found->place->step == 0);
    CHECK(found->place->state == static_cast<int>(job.result.steps[0].stroke.recording.states.size()) - 1);
    REQUIRE(found->place->at);
    const auto on =
        std::count_if(all.begin(), all.end(), [&](const Finding& f) { return f.words == found->words; });
    CHECK(on == 1);
}

TEST_CASE("a job that was not solved says so, and one without strokes has its reason without a place") {
    const tests::OwnFolder folder;
    const window::RanJob job = run(folder.write("case.toml", tests::unsolvable_case()));
    const std::vector<Finding> all = window::findings_of(job);
    REQUIRE_FALSE(all.empty());
    for (const std::string& f : job.result.findings) CHECK_MESSAGE(is_among(all, f), f);
    window::RanJob none;
    none.wrong = "no blank";
    REQUIRE(window::findings_of(none).size() == 1);
    CHECK_FALSE(window::findings_of(none)[0].place);
}
