// A case that is written reads back to itself, and the text of what was read back is the same.

#include <doctest/doctest.h>

#include <cmath>
#include <filesystem>
#include <limits>

#include "scenes/files/case/key_list.h"
#include "scenes/files/case/read_case.h"
#include "scenes/files/case/toml_text.h"
#include "scenes/files/case/write_case.h"
#include "sim/units.h"
#include "tests/case/case_leaves.h"
#include "tests/case/case_mistakes.h"
#include "tests/case/whole_cases.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::tests;
namespace fs = std::filesystem;

namespace {

// Written into a folder of its own and read from there.
Case there_and_back(const Case& job, const std::string& text) {
    const OwnFolder elsewhere;
    CAPTURE(text);
    Case back = job;
    REQUIRE_NOTHROW(back = read_case(elsewhere.write("written.toml", text), Needs::drawing_alone));
    return back;
}

void check_round_trip(const Case& job) {
    const std::string text = write_case(job);
    const Case back = there_and_back(job, text);
    for (const std::string& difference : differences(job, back)) FAIL_CHECK(difference);
    CHECK(write_case(back) == text);
}

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("every case that comes with the program reads back as it was") {
    int count = 0;
    for (const auto& entry : fs::directory_iterator("cases")) {
        if (!entry.is_directory()) continue;
        CAPTURE(entry.path().string());
        check_round_trip(read_case(entry.path() / "case.toml", Needs::drawing_alone));
        ++count;
    }
    CHECK(count >= 9);
}

TEST_CASE("cases with every key read back as they were") {
    check_round_trip(case_of(whole_case));
    check_round_trip(case_of(pressed_case));
}

TEST_CASE("a difference is seen wherever it is") {
    // Every number of a case, changed one at a time in the text, makes another case.
    const Case job = case_of(pressed_case);
    Case other = job;
    CHECK(differences(job, other).empty());
    std::get<Pad>(other.tools[9].shape).wound->count = 3;
    CHECK(differences(job, other).size() == 1);
    other.steps[0].stop_value *= 1.0 + 1e-11;
    CHECK(differences(job, other).size() == 2);
    other.title = "another";
    CHECK(differences(job, other).size() == 3);
    other.steps.pop_back();
    CHECK(differences(job, other).size() > 3);
}

TEST_CASE("every law of a card in the case reads back as it was") {
    const std::string before = whole_case.substr(0, whole_case.find("[material]"));
    const std::string after = whole_case.substr(whole_case.find("[part]"));
    for (std::string card : {swift_card, hollomon_card, voce_card, linear_card, table_card}) {
        // its tables, within the case's
        for (const char* name : {"hardening]", "backstress]", "modulus_drop]", "sources]"}) {
            const std::string header = std::string("[") + name;
            while (has(card, header)) card.insert(card.find(header) + 1, "material.");
        }
        CAPTURE(card);
        check_round_trip(case_of(before + "[material]\n" + card + after));
    }
}

TEST_CASE("a card in a file is named by its whole path, from whatever folder") {
    const OwnFolder folder;
    folder.write("cards/mine.toml", voce_card);
    const std::string text = replaced(
        whole_case.substr(0, whole_case.find("[material]")) + whole_case.substr(whole_case.find("[part]")),
        "[strip]\n", "[strip]\nmaterial = \"../cards/mine.toml\"\n");
    const Case job = read_case(folder.write("jobs/case.toml", text));
    CHECK(
        has(write_case(job), "material = \"" + fs::canonical(folder.path()).string() + "/cards/mine.toml\""));
    check_round_trip(job);
}

TEST_CASE("what stands about the tools, and how the strip was cut, reads back as it was") {
    Case job = case_of(whole_case);
    job.rolling = Rolling::crosswise;
    check_round_trip(job);
    const std::string text = write_case(job);
    CHECK(has(text, "\nrolling = \"crosswise\"\n"));
    CHECK(has(text, "\npunch_holder = { width_mm = 24.0, height_mm = 45.0 }\n"));
    CHECK(has(text,
              "\ngauge = { height_mm = 6.0, length_mm = 30.0, draws_back_mm = 0.0, reach_mm = 220.0, "
              "nearest_mm = 6.0 }\n"));
    job.press->gauge->draws_back = Gauge{}.draws_back;
    job.press->die_holder.reset();
    check_round_trip(job);
}

TEST_CASE("bend lines that were worked out are kept, to the last digit") {
    Case job = case_of(whole_case);
    job.bend_lines = {26.0 + 1.0 / 3.0, 48.5, 56.1, 84.0, 113.0 - 1e-13};
    const std::string text = write_case(job);
    CHECK(has(text, "\nbend_lines_mm = [26.333333333333332, 48.5, 56.1, 84.0, "));
    CHECK(there_and_back(job, text).bend_lines == job.bend_lines);
}

TEST_CASE("an outline without its points is written as lines and arcs") {
    const Case job = case_of(whole_case);
    Case bare = job;
    std::get<OutlineTool>(bare.tools[7].shape).points.clear();
    const std::string text = write_case(bare);
    Case back = there_and_back(bare, text);
    CHECK(write_case(back) == text);
    std::get<OutlineTool>(back.tools[7].shape).points.clear();
    for (const std::string& difference : differences(bare, back)) FAIL_CHECK(difference);
}

TEST_CASE("numbers that were worked out read back, to the last digit or within 1e-12 as an angle") {
    Case job = case_of(whole_case);
    job.part.bends[0].angle = std::nextafter(1.2345678901234567, 2.0);
    job.part.bends[3].inside_radius = 2.0 / 3.0;
    job.part.flats[0] = std::nextafter(24.0, 25.0);
    job.steps[0].stop_value = 100.0 / 63.7;
    job.steps[0].shift = -1e-9 / 3.0;
    job.blank_length = 1e5 / 3.0 - 33000.0;
    check_round_trip(job);
    const Case back = there_and_back(job, write_case(job));
    CHECK(back.part.bends[3].inside_radius == 2.0 / 3.0);
    CHECK(back.part.flats[0] == job.part.flats[0]);
    CHECK(back.steps[0].shift == job.steps[0].shift);
    CHECK(*back.blank_length == *job.blank_length);
}

TEST_CASE("numbers are short, and plainly decimal ones") {
    CHECK(number_text(1.0) == "1.0");
    CHECK(number_text(0.1) == "0.1");
    CHECK(number_text(-0.05) == "-0.05");
    CHECK(number_text(100000.0) == "100000.0");
    CHECK(number_text(1e-7) == "1e-07");
    CHECK(number_text(1e300) == "1e+300");
    CHECK(number_text(0.0) == "0.0");
    CHECK(number_text(1.0 / 3.0) == "0.3333333333333333");
    for (const double deg : {84.0, 47.5, 56.0, 0.1, 110.0, 33.3, 179.99, 180.0})
        CHECK(in_file("turn_deg", deg * pi / 180.0) == deg);
}

TEST_CASE("names with quotes, backslashes and letters of any script read back as they were") {
    Case job = case_of(whole_case);
    job.title = "Ein \"Winkel\" f\u00fcr C:\\teile # 3";
    job.tools[0].name = "\u5200 'a'";
    check_round_trip(job);
}

TEST_CASE("a comment stands on top, line by line, whatever is in it") {
    const Case job = case_of(pressed_case);
    const std::string text = write_case(job, "Planned.\n\ntitle = \"no\"\x01\x7f\r\n[strip]");
    CHECK(text.rfind("# Planned.\n#\n# title = \"no\"\n# [strip]\nformat = 1\n", 0) == 0);
    CHECK(differences(job, there_and_back(job, text)).empty());
}
