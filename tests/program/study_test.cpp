// overbend study: whole, in parts, stopped and gone on with, and what it refuses.

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

#include "tests/files/own_folder.h"
#include "tests/program/run_overbend.h"

using namespace overbend::tests;
using nlohmann::json;
namespace fs = std::filesystem;

namespace {

const std::string coarse = "format = 1\nsamples = 2\n[run]\nlayers = 5\nelements_per_thickness = 2.0\n";

std::string study_of(const OwnFolder& folder, const std::string& out, const std::string& more,
                     const std::string& text = coarse) {
    folder.write("study.toml", text);
    return "study cases/one-bend-dc01/case.toml '" + folder / "study.toml" + "' --out '" + folder / out +
           "' " + more;
}

}  // namespace

TEST_CASE("study: parts joined are one run, byte by byte") {
    const OwnFolder folder;
    const Run whole = run_overbend(study_of(folder, "whole", "--json"));
    REQUIRE(whole.status == 0);
    const json r = json::parse(whole.out);
    CHECK(r["rows"] == 14);
    CHECK(r["samples"] == 4);
    CHECK(r["sizes"][0]["importance"].size() == 5);
    CHECK_FALSE(fs::exists(folder.path() / "whole/rows-1-of-1.csv"));

    REQUIRE(run_overbend(study_of(folder, "parts", "--shard 1/2 --quiet")).status == 0);
    const Run early = run_overbend(study_of(folder, "parts", "--merge"));
    CHECK(early.status == 3);
    CHECK(early.error.find("7 rows of 14 are missing; run parts 2 of 2 again") != std::string::npos);
    CHECK(run_overbend(study_of(folder, "parts", "--missing 4")).out == "2,4\n");
    REQUIRE(run_overbend(study_of(folder, "parts", "--shard 2/2 --quiet")).status == 0);
    const Run merged = run_overbend(study_of(folder, "parts", "--merge --json"));
    REQUIRE(merged.status == 0);
    CHECK(merged.out == whole.out);
    CHECK(run_overbend(study_of(folder, "parts", "--missing 4")).out == "\n");
    for (const auto& [name, bytes] : files_below(folder.path() / "whole"))
        if (name.find(".pdf") == std::string::npos) CHECK(bytes_of(folder.path() / "parts" / name) == bytes);
}

TEST_CASE("study: a run that was cut off goes on") {
    const OwnFolder folder;
    REQUIRE(run_overbend(study_of(folder, "cut", "--shard 1/1 --quiet")).status == 0);
    const fs::path rows = folder.path() / "cut/rows-1-of-1.csv";
    const std::string all = bytes_of(rows);
    std::ofstream(rows, std::ios::binary) << all.substr(0, all.size() / 2);
    const Run again = run_overbend(study_of(folder, "cut", ""));
    CHECK(again.status == 0);
    CHECK(again.error.find("there already") != std::string::npos);
    REQUIRE(run_overbend(study_of(folder, "whole", "--quiet")).status == 0);
    CHECK(bytes_of(folder.path() / "cut/results.csv") == bytes_of(folder.path() / "whole/results.csv"));
}

TEST_CASE("study: rows of another study are not gone on with") {
    const OwnFolder folder;
    REQUIRE(run_overbend(study_of(folder, "one", "--shard 1/2 --quiet")).status == 0);
    const Run other = run_overbend(study_of(folder, "one", "--shard 1/2", coarse + "# another\n"));
    CHECK(other.status != 0);
    CHECK(other.error.find("another case, study or version") != std::string::npos);
}

TEST_CASE("study: a grid has a row for each combination, and its stops as asked") {
    const OwnFolder folder;
    const std::string grid =
        "format = 1\nstops = \"solved\"\n[run]\nlayers = 5\nelements_per_thickness = 2.0\n"
        "[[grid]]\nof = \"friction\"\nvalues = [0.05, 0.15]\n[[grid]]\nof = \"thickness_mm\"\nvalues = "
        "[0.95, 1.0, 1.05]\n";
    const Run run = run_overbend(study_of(folder, "grid", "--json --quiet", grid));
    CAPTURE(run.error);
    REQUIRE(run.status == 0);
    CHECK(json::parse(run.out)["rows"] == 6);
    CHECK(fs::exists(folder.path() / "grid/grid_01_angle_of_bend.svg"));
}

TEST_CASE("study: what does not go together is refused") {
    const OwnFolder folder;
    for (const std::string more : {"--shard 0/2", "--shard 3/2", "--shard 1", "--shard 1/2x",
                                   "--shard 1/2 --merge", "--missing 2 --merge", "--missing 0"}) {
        const Run run = run_overbend(study_of(folder, "out", more));
        CAPTURE(more);
        CHECK(run.status == 2);
        CHECK(run.out.empty());
    }
    CHECK(run_overbend(study_of(folder, "out", "", "format = 1\nsample = 3\n")).status == 2);
    CHECK(run_overbend("study cases/one-bend-dc01/case.toml").status == 2);
    CHECK_FALSE(fs::exists(folder.path() / "out/results.csv"));
}
