// What a case may leave out when its steps are to be planned, and what it says of the handling.

#include <doctest/doctest.h>

#include "scenes/files/case/read_case.h"
#include "scenes/files/case/write_case.h"
#include "tests/case/case_leaves.h"
#include "tests/case/case_mistakes.h"
#include "tests/case/whole_cases.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::tests;

namespace {

Case for_planning(const std::string& text) {
    const OwnFolder folder;
    return read_case(folder.write("case.toml", text), Needs::drawing_alone);
}

void as_drawing(const std::filesystem::path& file) {
    read_case(file, Needs::drawing_alone);
}

// What stands between the first of one text and the first of another, cut out.
std::string without(const std::string& text, const std::string& from, const std::string& to) {
    return text.substr(0, text.find(from)) + text.substr(text.find(to));
}

std::string no_steps() {
    return without(whole_case, "[[step]]", "[press]");
}
std::string no_tools() {
    return without(whole_case, "[[tool]]", "[press]");
}

}  // namespace

TEST_CASE("the drawing alone is read for planning, with the tools that are there") {
    CHECK(for_planning(no_steps()).steps.empty());
    CHECK(for_planning(no_steps()).tools.size() == 8);
    const Case bare = for_planning(no_tools());
    CHECK(bare.tools.empty());
    CHECK(bare.part.bends.size() == 5);
    REQUIRE(bare.press);
    // and it is written as such
    CHECK(differences(bare, for_planning(write_case(bare))).empty());
}

TEST_CASE("a case to be pressed needs its tools and steps; a plan makes them") {
    for (const auto& [text, key] : {std::pair(no_steps(), "step"), std::pair(no_tools(), "tool")}) {
        const auto error = mistake_in(text, as_case);
        REQUIRE(error);
        CHECK(error->key == key);
        CHECK(error->right.find("overbend plan") != std::string::npos);
    }
}

TEST_CASE(
    "steps that are there are checked when the case is read for planning, but need not make all bends") {
    const Case whole = for_planning(whole_case);
    CHECK(differences(whole, case_of(whole_case)).empty());
    const std::string two = without(whole_case, "[[step]]\nname = \"channel\"", "[press]");
    CHECK(mistake_in(two, as_case));
    CHECK(for_planning(two).steps.size() == 2);
    // a hem that is begun and not laid
    const std::string begun = without(pressed_case, "[[step]]\nname = \"flat\"", "[run]");
    CHECK(mistake_in(begun, as_case));
    CHECK(for_planning(begun).steps.size() == 1);

    const auto wrong = mistake_in(replaced(two, "bends = [\"lip\"]", "bends = [\"lipp\"]"), as_drawing);
    REQUIRE(wrong);
    CHECK(wrong->key == "step[1].bends[1]");
    const auto toolless = mistake_in(without(whole_case, "[[tool]]", "[[step]]"), as_drawing);
    REQUIRE(toolless);
    CHECK(toolless->key == "tool");
}

TEST_CASE("the handling is read as it stands; by itself it is that of a person at a small press") {
    const Handling given = case_of(whole_case).handling;
    CHECK(given.stroke == 6.5);
    CHECK(given.turn == 3.0);
    CHECK(given.flip == 3.5);
    CHECK(given.tool_change == 240.0);
    CHECK(given.gauge_change == 25.0);
    CHECK(given.slide == 7.0);
    const Handling usual = case_of(pressed_case).handling;
    CHECK(usual.stroke == 5.0);
    CHECK(usual.turn == 2.0);
    CHECK(usual.flip == 2.0);
    CHECK(usual.tool_change == 180.0);
    CHECK(usual.gauge_change == 20.0);
    CHECK(usual.slide == 4.0);
}
