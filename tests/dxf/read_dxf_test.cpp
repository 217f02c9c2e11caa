// What of a file is refused, each with its line and what would be right.

#include <doctest/doctest.h>

#include "tests/dxf/dxf_files.h"

using namespace overbend::tests;

namespace {

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

const std::string triangle = line(0, 0, 10, 0) + line(10, 0, 5, 8) + line(5, 8, 0, 0);

struct Refused {
    const char* what;
    std::string file;
    int line;
    const char* wrong;
};

}  // namespace

TEST_CASE("mistakes are told with the line of the file") {
    const std::vector<Refused> files = {
        {"inches", dxf_file(triangle, "1"), 8, "inches"},
        {"odd units", dxf_file(triangle, "17"), 8, "17"},
        {"a spline", dxf_file(triangle + groups_text({{0, "SPLINE"}, {8, "0"}})), 52, "SPLINE"},
        {"a block", dxf_file(groups_text({{0, "INSERT"}, {8, "0"}}) + triangle), 16, "INSERT"},
        {"an end left out", dxf_file(groups_text({{0, "LINE"}, {8, "0"}, {10, "0"}, {20, "0"}})), 16,
         "no group 11"},
        {"a number with letters", dxf_file(line(0, 0, 10, 0) + groups_text({{0, "CIRCLE"}, {10, "1x"}})), 30,
         "\"1x\" is not a finite number"},
        {"nan", dxf_file(groups_text({{0, "CIRCLE"}, {10, "nan"}, {20, "0"}, {40, "1"}})), 18, "nan"},
        {"infinite", dxf_file(groups_text({{0, "CIRCLE"}, {10, "1e999"}, {20, "0"}, {40, "1"}})), 18,
         "1e999"},
        {"far away", dxf_file(groups_text({{0, "CIRCLE"}, {10, "3000"}, {20, "0"}, {40, "1"}})), 18, "3000"},
        {"no radius", dxf_file(groups_text({{0, "CIRCLE"}, {10, "3"}, {20, "0"}, {40, "0"}})), 22, "radius"},
        {"in space", dxf_file(groups_text({{0, "CIRCLE"}, {10, "3"}, {20, "0"}, {30, "2"}, {40, "1"}})), 22,
         "z = 2"},
        {"from below", dxf_file(groups_text({{0, "CIRCLE"}, {10, "3"}, {20, "0"}, {40, "1"}, {230, "-1"}})),
         24, "plane"},
        {"other corners than said",
         dxf_file(groups_text({{0, "LWPOLYLINE"}, {90, "3"}, {70, "1"}, {10, "0"}, {20, "0"}})), 16,
         "wrong count of corners"},
        {"corners before their count",
         dxf_file(groups_text({{0, "LWPOLYLINE"}, {42, "1"}, {90, "1"}, {10, "0"}, {20, "0"}})), 18, "count"},
        {"a polyline without an end", dxf_file(groups_text({{0, "POLYLINE"}, {70, "1"}}) + triangle), 20,
         "SEQEND"},
        {"a corner alone", dxf_file(groups_text({{0, "VERTEX"}, {10, "1"}, {20, "1"}})), 16, "VERTEX"},
        {"a polyline in space", dxf_file(groups_text({{0, "POLYLINE"}, {70, "8"}, {0, "SEQEND"}})), 16,
         "in space"},
        {"nothing", dxf_file(""), 0, "no lines or arcs"},
    };
    for (const Refused& refused : files) {
        CAPTURE(std::string(refused.what));
        const Mistake mistake = mistake_of(refused.file);
        CAPTURE(mistake.wrong);
        CHECK(mistake.line == refused.line);
        CHECK(has(mistake.wrong, refused.wrong));
        CHECK_FALSE(mistake.right.empty());
    }
}

TEST_CASE("words and dimensions are passed over, and so are other layers and sheets of paper") {
    const std::string words =
        groups_text({{0, "TEXT"}, {8, "0"}, {10, "1"}, {20, "1"}, {40, "2"}, {1, "8 mm"}}) +
        groups_text({{0, "DIMENSION"}, {8, "0"}}) + groups_text({{0, "POINT"}, {8, "0"}});
    CHECK(mistake_of(dxf_file(words + triangle)).line == -1);
    CHECK(mistake_of(dxf_file(triangle + groups_text({{0, "SPLINE"}, {8, "other"}})), "0").line == -1);
    CHECK(mistake_of(dxf_file(triangle + groups_text({{0, "SPLINE"}, {8, "0"}, {67, "1"}}))).line == -1);
    CHECK(mistake_of(dxf_file(triangle, "0")).line == -1);  // no units: mm
}

TEST_CASE("line ends of other systems, comments and blanks do no harm") {
    std::string text = dxf_file(groups_text({{999, "a comment"}}) + triangle), other;
    for (const char c : text) other += c == '\n' ? std::string("\r\n") : std::string(1, c);
    CHECK(mistake_of(other).line == -1);
    CHECK(mistake_of(text + "\n\n").line == -1);
}

TEST_CASE("more pieces than any tool has are refused") {
    std::string many;
    for (int i = 0; i < 1001; ++i) many += line(i, 0, i + 1, 0);
    CHECK(has(mistake_of(dxf_file(many)).wrong, "more than 1000"));
}
