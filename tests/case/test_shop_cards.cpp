// Presses, tool steels and costs: the cards that come with the program, and what a case says of them.

#include <doctest/doctest.h>

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <set>

#include "scenes/files/case/describe.h"
#include "scenes/files/case/named_asset.h"
#include "scenes/files/case/read_case.h"
#include "scenes/files/case/read_shop.h"
#include "scenes/files/case/write_case.h"
#include "sim/units.h"
#include "tests/case/case_leaves.h"
#include "tests/case/case_mistakes.h"
#include "tests/case/whole_cases.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::tests;
using doctest::Approx;

TEST_CASE("the presses that come with the program are whole") {
    const std::vector<std::string> names = known_names(presses);
    CHECK(names.size() >= 4);
    for (const std::string& name : names) {
        CAPTURE(name);
        const Press press = read_press_card(name, "");
        CHECK_FALSE(press.title.empty());
        CHECK(press.daylight);
        CHECK(press.throat);
        CHECK(press.line_load);
        CHECK(press.speeds);
        CHECK(press.price_per_hour);
        CHECK(press.punch_holder);
        CHECK(press.bed);
    }
}

// What the card gives in degrees is an angle inside; a press that does not say has 30 degrees.
TEST_CASE("an eccentric press is rated at an angle of its crank") {
    const Press press = read_press_card("eccentric-160", "");
    REQUIRE(press.eccentric);
    CHECK(press.eccentric->rated_angle == Approx(30.0 * degree));
    CHECK(shop::Eccentric{}.rated_angle == Approx(30.0 * degree));
    CHECK_FALSE(read_press_card("bench-60", "").eccentric);
    CHECK(case_of(whole_case).press->eccentric->rated_angle == Approx(25.0 * degree));
}

// Tabor: a Vickers hardness is near three times the flow stress, in kgf/mm2. A yield strength of 0.2 per cent
// lies below it, most of all of soft steel, which hardens under the indenter.
TEST_CASE("the tool steels that come with the program are whole, and as strong as they are hard") {
    const std::vector<std::string> names = known_names(tool_steels);
    for (const char* asked : {"1.2363", "1.2379", "1.2842", "1.2312", "C45"})
        CHECK(std::find(names.begin(), names.end(), asked) != names.end());
    for (const std::string& name : names) {
        CAPTURE(name);
        const shop::ToolSteel steel = read_tool_steel(name, "");
        const double flow = 9.81 * steel.hardness / 3.0;
        CHECK(steel.compressive_yield < 1.02 * flow);
        CHECK(steel.compressive_yield > 0.5 * flow);
        const shop::Allowable allowed = shop::allowables(steel);
        CHECK(allowed.tension <= allowed.compression);
        CHECK((steel.hardening == shop::Hardening::through) == (steel.hardness > 500.0));
    }
}

TEST_CASE("a press by its name stands in the case as its card has it, and is written by its name") {
    const Case job = case_of(racked_case);
    REQUIRE(job.press);
    CHECK(job.press_name == "bench-60");
    CHECK(job.press->title == read_press_card("bench-60", "").title);
    CHECK(job.press->gauge->reach == 250.0);
    const std::string text = write_case(job);
    CHECK(text.find("press = \"bench-60\"") != std::string::npos);
    CHECK(text.find("[press]") == std::string::npos);
}

TEST_CASE(
    "a press and a steel of one's own, by a path from beside the case, are written with the whole path") {
    const OwnFolder folder;
    folder.write("own/mine.toml", press_card);
    folder.write("own/steel.toml", hard_steel);
    const std::string text =
        replaced(replaced(racked_case, "\"bench-60\"", "\"../own/mine.toml\""), "nose_radius_mm = 1\n",
                 "nose_radius_mm = 1\nsteel = \"../own/steel.toml\"\n");
    const Case job = read_case(folder.write("jobs/case.toml", text));
    CHECK(std::filesystem::path(job.press_name).is_absolute());
    CHECK(job.press->title == "Invented press");
    CHECK(std::filesystem::path(job.tools.back().make.steel).is_absolute());
    CHECK(job.tools.back().make.card->hardness == Approx(697.0));
    const Case back = read_case(folder.write("elsewhere/deep/case.toml", write_case(job)));
    for (const std::string& difference : differences(job, back)) FAIL_CHECK(difference);
}

TEST_CASE("what is wrong in a steel's card is told with that card's file") {
    const OwnFolder folder;
    folder.write("steel.toml", replaced(hard_steel, "safety_tension = 4", "safety_tension = 0"));
    const std::string text =
        replaced(racked_case, "nose_radius_mm = 1\n", "nose_radius_mm = 1\nsteel = \"steel.toml\"\n");
    try {
        read_case(folder.write("case.toml", text));
        FAIL("it was taken");
    } catch (const CaseError& error) {
        CHECK(error.file.find("steel.toml") != std::string::npos);
        CHECK(error.key == "safety_tension");
        CHECK(error.line == 9);
    }
}

TEST_CASE("costs: what is left out is the press's, or the usual") {
    const Case bare = case_of(racked_case);
    CHECK_FALSE(bare.cost);
    CHECK(usual_rates(bare).press_per_hour == 18.0);
    const Case job = case_of(racked_case + "\n[cost]\nbatch = 200\n");
    REQUIRE(job.cost);
    CHECK(job.cost->batch == 200);
    CHECK(job.cost->press_per_hour == 18.0);
    CHECK(job.cost->idle_power == 0.6);
    CHECK_FALSE(job.cost->strip_per_kg);  // the metal's
    CHECK_FALSE(job.cost->cutting_speed);
    const Case own = case_of(racked_case + "\n[cost]\npress_price_per_h = 30\nend_scrap_percent = 7\n");
    CHECK(own.cost->press_per_hour == 30.0);
    CHECK(own.cost->end_scrap == Approx(0.07));
    const std::string text = write_case(own);
    CHECK(text.find("press_price_per_h = 30") != std::string::npos);
    CHECK(text.find("end_scrap_percent = 7") != std::string::npos);
}

// "... (common practice, no source: 1 to 5)": the default, at the end of what holds without the key ("2",
// "the press's, or 30"), is the middle of the range.
TEST_CASE("costs: each default is the middle of the range that its key states") {
    const std::set<std::string> no_range = {"money", "batch", "sheet_mm", "tool_batches"};  // the case's own
    int ranges = 0;
    for (const KeyEntry& key : keys_of<CostTable>()) {
        CAPTURE(key.name);
        CAPTURE(key.words);
        const std::size_t at = key.words.find("(common practice, no source: ");
        REQUIRE((at == std::string::npos) == (no_range.count(key.name) == 1));
        if (at == std::string::npos) continue;
        double low = 0.0, high = 0.0;
        REQUIRE(std::sscanf(key.words.c_str() + at, "(common practice, no source: %lf to %lf", &low, &high) ==
                2);
        const std::size_t digit = key.usual.find_first_of("0123456789");
        REQUIRE(digit != std::string::npos);
        CHECK(std::stod(key.usual.substr(digit)) == Approx(0.5 * (low + high)));
        CHECK(low < high);
        ++ranges;
    }
    CHECK(ranges == static_cast<int>(keys_of<CostTable>().size() - no_range.size()));
}

TEST_CASE("two hardnesses, and a sheet with one side, are refused") {
    const std::optional<CaseError> twice = mistake_in(
        replaced(hard_steel, "hardness_HRC = 60", "hardness_HRC = 60\nhardness_HV = 700"), as_steel);
    REQUIRE(twice);
    CHECK(twice->key == "hardness_HV");
    const std::optional<CaseError> sheet =
        mistake_in(replaced(whole_case, "sheet_mm = [1500, 600]", "sheet_mm = [1500]"), as_case);
    REQUIRE(sheet);
    CHECK(sheet->key == "cost.sheet_mm");
}
