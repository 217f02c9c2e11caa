// Tools from a rack: read before the case's own, told from them, and never written as the case's.

#include <doctest/doctest.h>

#include <cstdlib>
#include <filesystem>

#include "scenes/files/case/named_asset.h"
#include "scenes/files/case/read_case.h"
#include "scenes/files/case/write_case.h"
#include "tests/case/case_leaves.h"
#include "tests/case/case_mistakes.h"
#include "tests/case/whole_cases.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::tests;
namespace fs = std::filesystem;

namespace {

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

std::string with_own_rack() {
    return replaced(replaced(racked_case, "\"small-press\"", "\"../racks/mine.toml\""), "two-way die 8",
                    "die");
}

// The case jobs/case.toml beside the rack racks/mine.toml is wrong.
CaseError mistake_with_rack(const std::string& text, const std::string& rack) {
    const OwnFolder folder;
    folder.write("racks/mine.toml", rack);
    try {
        read_case(folder.write("jobs/case.toml", text));
    } catch (const CaseError& error) {
        return error;
    }
    FAIL("it was taken");
    std::abort();
}

}  // namespace

TEST_CASE("a rack's tools stand before the case's own, and know where they are from") {
    const Case job = case_of(racked_case);
    CHECK(job.rack == "small-press");
    REQUIRE(job.tools.size() > 10);
    for (std::size_t i = 0; i + 1 < job.tools.size(); ++i) CHECK(job.tools[i].from_rack);
    CHECK_FALSE(job.tools.back().from_rack);
    CHECK(job.tools.back().name == "own punch");
    const auto& relief = std::get<tool::VeePunch>(job.tools.back().shape).relief;
    REQUIRE(relief);
    CHECK(relief->side == tool::Side::left);
    CHECK(relief->from == 9.0);
    CHECK(relief->to == 45.0);
    CHECK(relief->set_back == 3.0);
    CHECK(relief->neck == 2.5);
    CHECK(relief->root_radius == 4.0);
    CHECK(job.steps[0].punch == static_cast<int>(job.tools.size()) - 1);
    CHECK(job.tools[job.steps[0].die].name == "two-way die 8");
    CHECK(case_of(whole_case).rack.empty());
}

TEST_CASE("a case with a rack is written with the rack's name and its own tools alone") {
    const Case job = case_of(racked_case);
    const std::string text = write_case(job);
    CHECK(has(text, "\nrack = \"small-press\"\n"));
    CHECK(has(text, "name = \"own punch\""));
    CHECK_FALSE(has(text, "name = \"two-way die 10\""));
    const Case back = case_of(text);
    for (const std::string& difference : differences(job, back)) FAIL_CHECK(difference);
    CHECK(write_case(back) == text);
}

TEST_CASE("a rack may be a file beside the case, and is written with its whole path") {
    const OwnFolder folder, elsewhere;
    folder.write("racks/mine.toml", rack_file);
    const Case job = read_case(folder.write("jobs/case.toml", with_own_rack()));
    CHECK(job.tools.size() == 3);
    CHECK(job.rack == fs::canonical(folder.path() / "racks/mine.toml").string());
    const std::string text = write_case(job);
    const Case back = read_case(elsewhere.write("case.toml", text));
    for (const std::string& difference : differences(job, back)) FAIL_CHECK(difference);
}

TEST_CASE("what is wrong in a rack is told of the rack, what is wrong with naming it of the case") {
    const CaseError bad = mistake_with_rack(with_own_rack(), replaced(rack_file, "= 60", "= 600"));
    CHECK(fs::path(bad.file).filename() == "mine.toml");
    CHECK(bad.line == line_of(rack_file, "angle_deg"));
    CHECK(bad.key == "tool[1].angle_deg");

    const CaseError twice = mistake_with_rack(with_own_rack(), replaced(rack_file, "\"die\"", "\"punch\""));
    CHECK(fs::path(twice.file).filename() == "mine.toml");
    CHECK(has(twice.wrong, "before this one"));

    const CaseError taken =
        mistake_with_rack(with_own_rack(), replaced(rack_file, "\"die\"", "\"own punch\""));
    CHECK(fs::path(taken.file).filename() == "case.toml");
    CHECK(taken.key == "tool[1].name");
    CHECK(has(taken.wrong, "in the rack"));

    const CaseError empty =
        mistake_with_rack(with_own_rack(), rack_file.substr(0, rack_file.find("[[tool]]")));
    CHECK(fs::path(empty.file).filename() == "mine.toml");
    CHECK(has(empty.wrong, "empty"));

    const CaseError absent =
        mistake_with_rack(replaced(with_own_rack(), "mine.toml", "yours.toml"), rack_file);
    CHECK(fs::path(absent.file).filename() == "case.toml");
    CHECK(absent.key == "rack");
    CHECK(has(absent.wrong, "yours.toml"));

    const CaseError unknown =
        mistake_with_rack(replaced(racked_case, "small-press", "smal-press"), rack_file);
    CHECK(unknown.key == "rack");
    CHECK(has(unknown.right, "the nearest is small-press"));
}

TEST_CASE("without racks in the folder of assets a name finds none") {
    const OwnFolder folder;
    fs::create_directory(folder.path() / "materials");
    setenv("OVERBEND_ASSETS", folder.path().c_str(), 1);
    CHECK(known_names(tool_racks).empty());
    CHECK_THROWS_AS(file_of("small-press", "", tool_racks), CaseError);
    unsetenv("OVERBEND_ASSETS");
}

TEST_CASE("every rack that comes with the program can be made, with more than one punch and die") {
    REQUIRE_FALSE(known_names(tool_racks).empty());
    for (const std::string& name : known_names(tool_racks)) {
        CAPTURE(name);
        const OwnFolder folder;
        const std::string text = racked_case.substr(0, racked_case.find("[[tool]]"));
        const Case job =
            read_case(folder.write("case.toml", replaced(text, "small-press", name)), Needs::drawing_alone);
        int punches = 0, dies = 0;
        for (const Tool& tool : job.tools) punches += tool.is_punch(), dies += tool.is_die();
        CHECK(punches > 1);
        CHECK(dies > 1);
    }
}
