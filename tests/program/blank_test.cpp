// The command `blank` from outside: the flat pattern's figures and drawings.

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

std::string small_in(const OwnFolder& folder, const std::string& text = small_case) {
    return "'" + folder.write("case.toml", text).string() + "'";
}

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

}  // namespace

// Flats and allowances make the blank: 12 + 20 + 12 mm and two bends.
TEST_CASE("blank: flats and allowances together are the blank, by each of the three") {
    const OwnFolder folder;
    const Run run = run_overbend("blank " + small_in(folder) + " --json");
    CAPTURE(run.error);
    CHECK(run.status == 0);
    const json r = json::parse(run.out);
    CHECK(r["format"] == 2);
    CHECK(r["simulated"] == true);
    REQUIRE(r["bends"].size() == 2);
    for (const char* way : {"mechanics", "din_6935", "handbook"}) {
        CAPTURE(std::string(way));
        double length = 44.0;
        for (const json& bend : r["bends"])
            length += bend["allowance_" + std::string(way) + "_mm"].get<double>();
        CHECK(std::abs(length - r["developed_" + std::string(way) + "_mm"].get<double>()) < 1e-9);
    }
    // to the last digit that is printed
    CHECK(std::abs(r["blank_length_mm"].get<double>() - r["developed_mechanics_mm"].get<double>()) < 1e-9);
    CHECK(r["bends"][0]["turn"] == "up");
    CHECK(r["bends"][1]["turn"] == "down");
    CHECK(r["bends"][0]["at_mm"].get<double>() < r["bends"][1]["at_mm"].get<double>());
    CHECK(r["bends"][0]["inside_radius_made_mm"].get<double>() > 0.3);
}

TEST_CASE(
    "blank: its blank is that of `check`, written into the case it is the same, and gives the drawing's "
    "legs") {
    const OwnFolder folder;
    const std::string file = small_in(folder);
    const json blank = json::parse(run_overbend("blank " + file + " --json").out);
    const json part = json::parse(run_overbend("check " + file + " --json").out)["part"];
    CHECK(blank["blank_length_mm"] == part["blank_length_mm"]);
    std::string lines;
    for (int b = 0; b < 2; ++b) {
        CHECK(blank["bends"][b]["at_mm"] == part["bend_lines"][b]["at_mm"]);
        lines += (b == 0 ? "" : ", ") + blank["bends"][b]["at_mm"].dump();
    }
    for (const json& size : part["measures"])
        if (size["kind"] == "leg") CHECK(std::abs(size["off"].get<double>()) < 0.03);
    const std::string with_lines =
        replaced(small_case, "width_mm = 20.0\n",
                 "width_mm = 20.0\nblank_length_mm = " + blank["blank_length_mm"].dump() +
                     "\nbend_lines_mm = [" + lines + "]\n");
    const json again =
        json::parse(run_overbend("check " + small_in(folder, with_lines) + " --json").out)["part"];
    CHECK(again == part);
}

TEST_CASE("blank: three drawings, the same bytes every time, and a table") {
    const OwnFolder folder;
    const std::string text = replaced(
        small_case, "path = [", "cutouts = [ { at_mm = 15.5, across_mm = 10.0, hole_mm = 3.0 } ]\npath = [");
    const std::string file = small_in(folder, text);
    const Run run = run_overbend("blank " + file + " --out '" + folder / "one" + "'");
    CAPTURE(run.error);
    CHECK(run.status == 0);
    for (const char* part :
         {"heel", "toe", "down", "Developed length\n", "By DIN 6935", "hole 3.0", "too close", "Cautions:"}) {
        CAPTURE(std::string(part));
        CHECK(has(run.out, part));
    }
    run_overbend("blank " + file + " --quiet --out '" + folder / "two" + "'");
    Files one = files_below(folder / "one");
    CHECK(one.size() == 4);  // three drawings, and the case with this blank
    CHECK(one == files_below(folder / "two"));
    CHECK(one["blank.png"].substr(1, 3) == "PNG");
    CHECK(one["blank.pdf"].substr(0, 5) == "%PDF-");
    CHECK(has(one["blank.svg"], "<svg"));
}

TEST_CASE("blank: statuses as the other commands'") {
    const OwnFolder folder;
    const Run quiet = run_overbend("blank " + small_in(folder) + " --quiet");
    CHECK(quiet.status == 0);
    CHECK(has(quiet.out, "\nFeasible: no problems found.\n"));
    CHECK_FALSE(has(quiet.out, "Estimates"));
    const std::string wrong =
        replaced(small_case, "stop = { free_deg = 60.0 }", "stop = { free_deg = 50.0 }");
    const Run no = run_overbend("blank " + small_in(folder, wrong));
    CHECK(no.status == 1);
    CHECK(has(no.out, "bend 'heel': 50.00 degrees instead of 60.00"));
    const Run unsolved = run_overbend("blank " + small_in(folder, unsolvable_case()) + " --json");
    CHECK(unsolved.status == 3);
    const json r = json::parse(unsolved.out);
    CHECK(r["simulated"] == false);
    CHECK(r["developed_mechanics_mm"].is_null());
    CHECK(r["bends"][0]["allowance_din_6935_mm"].get<double>() > 1.0);
    CHECK_FALSE(r["findings"].empty());
    CHECK(run_overbend("blank").status == 2);
    CHECK(run_overbend("blank /nowhere/case.toml").status == 2);
    CHECK(run_overbend("blank " + small_in(folder) + " --out /proc").status == 2);
}
