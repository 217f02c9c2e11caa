// The figures of every case against those that were approved, kept in cases/NAME/approved.json.
//
// Source  our own results, approved by somebody who looked at what had changed: these checks find what
//         changes, not what is true. What is true is checked from outside, in tests/outside.
//
// With --accept the differences are shown first, and the new figures are written when they are agreed to
// (--yes agrees).

#define DOCTEST_CONFIG_IMPLEMENT
#include <doctest/doctest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iostream>

#include "render/output/whole_file.h"
#include "scenes/documents/results/results_json.h"
#include "scenes/files/case/read_case.h"
#include "scenes/job/run/process.h"
#include "tests/approved/figures.h"

using namespace overbend;
using overbend::tests::approved_figures;
using overbend::tests::differences;
using Json = nlohmann::ordered_json;
namespace fs = std::filesystem;

namespace {

std::vector<fs::path> case_folders() {
    std::vector<fs::path> folders;
    for (const fs::directory_entry& entry : fs::directory_iterator("cases"))
        if (fs::exists(entry.path() / "case.toml")) folders.push_back(entry.path());
    std::sort(folders.begin(), folders.end());
    return folders;
}

Json figures_now(const fs::path& folder) {
    const files::Case c = files::read_case(folder / "case.toml");
    return approved_figures(Json::parse(documents::results_json(c, job::run_process(c, {}))));
}

Json approved_before(const fs::path& folder) {
    std::ifstream file(folder / "approved.json");
    if (!file) return {{"tolerances", tests::usual_tolerances()}, {"figures", Json::object()}};
    return Json::parse(file);
}

bool agreed(bool yes) {
    if (yes) return true;
    if (isatty(STDIN_FILENO) == 0) {
        std::cout << "Nothing is written: nobody is asked here. Run again with --yes to accept.\n";
        return false;
    }
    std::cout << "Accept these figures? [y/N] " << std::flush;
    std::string answer;
    std::getline(std::cin, answer);
    return answer == "y" || answer == "Y";
}

// The status of the program.
int accept(bool yes) {
    std::vector<std::pair<fs::path, Json>> changed;
    for (const fs::path& folder : case_folders()) {
        Json approved = approved_before(folder);
        const Json now = figures_now(folder);
        const std::vector<std::string> lines = differences(approved, now);
        if (lines.empty()) continue;
        std::cout << folder.filename().string() << ":\n";
        for (const std::string& line : lines) std::cout << "  " << line << "\n";
        approved["figures"] = now;
        changed.emplace_back(folder / "approved.json", approved);
    }
    if (changed.empty()) {
        std::cout << "Every figure is as approved.\n";
        return 0;
    }
    if (!agreed(yes)) return 1;
    for (const auto& [path, approved] : changed) output::write_whole(path, approved.dump(2) + "\n");
    return 0;
}

}  // namespace

TEST_CASE("differences are found by each key's tolerance") {
    const Json approved = {{"tolerances", {{"free_deg", 0.15}, {"force_kN_percent", 2}, {"profile_mm", 0.1}}},
                           {"figures",
                            {{"feasible", true},
                             {"bend", {{"free_deg", 90.0}}},
                             {"force_kN", 10.0},
                             {"profile_mm", {{0.0, 1.0}, {2.0, 3.0}}}}}};
    Json found = approved.at("figures");
    CHECK(differences(approved, found).empty());
    found["bend"]["free_deg"] = 90.1, found["force_kN"] = 10.19, found["profile_mm"][1][0] = 2.09;
    CHECK(differences(approved, found).empty());
    found["bend"]["free_deg"] = 90.2;
    CHECK(
        differences(approved, found) ==
        std::vector<std::string>{"/bend/free_deg: 90.2000, approved 90.0000, 0.2000 apart, 0.1500 allowed"});
    found["force_kN"] = 10.21, found["profile_mm"][1][0] = 2.11, found["feasible"] = false;
    CHECK(differences(approved, found).size() == 4);
    found.erase("bend"), found["new"] = 1.0;
    CHECK(differences(approved, found).size() == 5);
}

TEST_CASE("every case gives the approved figures") {
    const std::vector<fs::path> folders = case_folders();
    REQUIRE(folders.size() >= 10);
    for (const fs::path& folder : folders)
        for (const std::string& line : differences(approved_before(folder), figures_now(folder)))
            FAIL_CHECK(folder.filename().string() << line);
}

int main(int argc, char** argv) {
    const std::vector<std::string> words(argv + 1, argv + argc);
    const auto has = [&](const char* word) {
        return std::find(words.begin(), words.end(), word) != words.end();
    };
    if (has("--accept")) return accept(has("--yes"));
    return doctest::Context(argc, argv).run();
}
