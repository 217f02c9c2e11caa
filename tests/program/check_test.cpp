// The command `check` from outside: verdicts as exit statuses, and results.json that is there whole or not at
// all.
//
// An unfit --out is refused with status 2. A disk that is full when results.json is written is nobody's wrong
// usage: status 3, as for an output that cannot be written.

#include <doctest/doctest.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <string>

#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"
#include "tests/program/run_overbend.h"

using namespace overbend::tests;
using nlohmann::json;

namespace {

std::string small_in(const OwnFolder& folder) {
    return "'" + folder.write("case.toml", small_case).string() + "'";
}

// Keys without a value, which is also what numbers that are not finite would have become.
void collect_nulls(const json& value, const std::string& key, std::string& found) {
    if (value.is_null()) found += " " + key;
    if (!value.is_structured()) return;
    for (const auto& [name, inner] : value.items())
        collect_nulls(inner, value.is_object() ? name : key, found);
}

// The only file in a folder, as JSON.
json results_in(const std::string& folder) {
    const Files files = files_below(folder);
    CAPTURE(folder);
    REQUIRE(files.size() == 1);
    REQUIRE(files.count("results.json") == 1);
    json results = json::parse(files.at("results.json"), nullptr, false);
    REQUIRE(results.is_object());
    CHECK(results["format"] == 2);
    return results;
}

}  // namespace

TEST_CASE("check: the demo is feasible, and every number of it is one") {
    const OwnFolder folder;
    const Run run = run_overbend("check cases/cable-hook/case.toml --out '" + folder / "out/new" + "'");
    CAPTURE(run.error);
    CHECK(run.status == 0);
    CHECK(run.error.empty());
    CHECK(run.out.find("\nFeasible: ") != std::string::npos);
    const json results = results_in(folder / "out/new");
    CHECK(results["feasible"] == true);
    CHECK(results["findings"].empty());
    CHECK(results["steps"].size() == 6);
    CHECK(results["part"]["finished_angles"].size() == 8);
    for (json step : results["steps"]) {
        CHECK(step["outcome"] == "reached");
        step.erase("least_clearance");  // null where nothing but the forming zone is near
        std::string nulls;
        collect_nulls(step, "", nulls);
        CHECK(nulls.empty());
    }
    std::string nulls;
    collect_nulls(results["part"], "", nulls);
    CHECK(nulls.empty());
}

TEST_CASE("check: a wrong order is a verdict of no, with all its numbers") {
    const OwnFolder folder;
    const Run run = run_overbend("check cases/wrong-order/case.toml --out '" + folder / "out" + "'");
    CAPTURE(run.error);
    CHECK(run.status == 1);
    CHECK(run.error.empty());
    CHECK(run.out.find("\nNot feasible") != std::string::npos);
    const json results = results_in(folder / "out");
    CHECK(results["feasible"] == false);
    REQUIRE_FALSE(results["findings"].empty());
    CHECK(run.out.find(results["findings"][0].get<std::string>()) != std::string::npos);
    CHECK_FALSE(results["steps"][1]["interferences"].empty());
    CHECK(results["part"]["finished_angles"].size() == 3);
}

TEST_CASE("check: a stroke that cannot be solved is told with its reason") {
    const OwnFolder folder;
    const std::string file = folder.write("case.toml", unsolvable_case()).string();
    const Run run = run_overbend("check '" + file + "' --out '" + folder / "out" + "'");
    CHECK(run.status == 3);
    const json results = results_in(folder / "out");
    CHECK(results["feasible"] == false);
    REQUIRE(results["steps"].size() == 1);  // nothing goes on from there
    const json& step = results["steps"][0];
    CHECK(step["outcome"] != "reached");
    const std::string reason = step["reason"];
    CHECK_FALSE(reason.empty());
    CHECK(results["findings"] == json::array({"step 'first': " + reason}));
    CHECK(run.out.find(reason) != std::string::npos);
    CHECK(results["part"].count("finished_angles") == 0);
}

TEST_CASE("check: a stroke that cannot be solved gives no numbers that it does not have") {
    const OwnFolder folder;
    const std::string file = folder.write("case.toml", unsolvable_case()).string();
    const json step = json::parse(run_overbend("check '" + file + "' --json").out)["steps"][0];
    CHECK(step["peak_force_kN"] != 0.0);
    CHECK(step["increments"] != 0);
    for (const json& bend : step["bends"]) {
        CHECK(bend["loaded_deg"] != 0.0);
        CHECK(bend["free_deg"] != 0.0);
        CHECK(bend["thickness_mm"] != 0.0);
    }
}

TEST_CASE("check: the same case gives the same bytes, wherever it is run from") {
    const OwnFolder folder;
    const std::string file = small_in(folder);
    CHECK(run_overbend("check " + file + " --out '" + folder / "one" + "'").status == 0);
    const std::string there = "cd '" + folder / "" + "' && ";
    const Run run = run_overbend("check case.toml --json --out two", there);
    CHECK(run.status == 0);
    const std::string first = files_below(folder / "one")["results.json"];
    CHECK(first.size() > 1000);
    CHECK(files_below(folder / "two")["results.json"] == first);
    CHECK(run.out == first);
}

TEST_CASE("check: an earlier results.json is replaced, and nothing else is touched") {
    const OwnFolder folder;
    const std::string file = small_in(folder);
    folder.write("out/results.json", std::string(100000, 'x'));
    folder.write("out/notes.txt", "kept");
    CHECK(run_overbend("check " + file + " --quiet --out '" + folder / "out" + "'").status == 0);
    Files files = files_below(folder / "out");
    CHECK(files.size() == 2);
    CHECK(files["notes.txt"] == "kept");
    CHECK(json::accept(files["results.json"]));
}

TEST_CASE("check: without --out no file is written, and --quiet leaves the status alone") {
    const OwnFolder folder;
    small_in(folder);
    const Files before = files_below(folder / "");
    const Run run = run_overbend("check case.toml --quiet", "cd '" + folder / "" + "' && ");
    CHECK(run.status == 0);
    CHECK(run.out.find("\nFeasible: no problems found.\n") != std::string::npos);
    CHECK(run.out.find("Not checked") == std::string::npos);
    CHECK(run.error.empty());
    CHECK(files_below(folder / "") == before);
}

TEST_CASE("check: an --out that can be no folder is refused, and all stays as it was") {
    const OwnFolder folder;
    const std::string file = small_in(folder);
    folder.write("file", "kept");
    const Files before = files_below(folder / "");
    for (const std::string& out : {folder / "file", folder / "file/below", std::string("/proc/new")}) {
        CAPTURE(out);
        const Run run = run_overbend("check " + file + " --out '" + out + "'");
        CAPTURE(run.error);
        CHECK(run.status == 2);
        CHECK(run.out.empty());
        CHECK(run.error.rfind("overbend: --out: ", 0) == 0);
        CHECK(run.error.find(out) != std::string::npos);
        CHECK(files_below(folder / "") == before);
    }
}

TEST_CASE("check: an --out that is there but takes no files is refused like one that cannot be made") {
    const OwnFolder folder;
    const Run run = run_overbend("check " + small_in(folder) + " --out /proc");
    CHECK(run.status == 2);
}

TEST_CASE("check: an --out without a name is refused") {
    const OwnFolder folder;
    const Run run = run_overbend("check " + small_in(folder) + " --out ''");
    CHECK(run.status == 2);
}

TEST_CASE("check: a results.json that cannot be written whole is not begun, and an old one stays") {
    const OwnFolder folder;
    const std::string file = small_in(folder);
    folder.write("out/results.json", "old");
    const Files before = files_below(folder / "");
    // A disk that takes no more than 1024 bytes a file.
    const Run run =
        run_overbend("check " + file + " --out '" + folder / "out" + "'", "trap '' XFSZ; ulimit -f 2; ");
    CAPTURE(run.error);
    CHECK(run.status == 3);
    CHECK(run.out.empty());
    CHECK(run.error.rfind("overbend: " + folder / "out/results.json: ", 0) == 0);
    CHECK(files_below(folder / "") == before);
}
