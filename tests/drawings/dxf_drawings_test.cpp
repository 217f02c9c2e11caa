// The contours of DXF drawings come back as tools, and names of files are safe.

#include <doctest/doctest.h>

#include "scenes/documents/drawings/drawings.h"
#include "scenes/documents/drawings/dxf_drawings.h"
#include "scenes/documents/drawings/part_sheet.h"
#include "scenes/files/case/read_case.h"
#include "scenes/files/case/tool_outline.h"
#include "scenes/files/dxf/chain.h"
#include "scenes/files/dxf/write_dxf.h"
#include "tests/files/random_tool.h"

using namespace overbend;
using namespace overbend::documents;
using namespace overbend::files;
using namespace overbend::job;

TEST_CASE("a tool's DXF drawing can be taken for its outline") {
    std::mt19937 random(8);
    for (int kind = 0; kind < tests::tool_kinds; ++kind) {
        for (int i = 0; i < 10; ++i) {
            const Tool tool = tests::random_tool(kind, random);
            const tool::ArcOutline made = tool_outline(tool, 1);
            const tool::ArcOutline found(chained(read_dxf(dxf_text(tool_dxf(tool)), "CONTOUR"), 0.0));
            CHECK(found.pieces().size() == made.pieces().size());
            CHECK(std::abs(found.area() - made.area()) < 1e-6);
        }
    }
}

TEST_CASE("the part's outline is closed and has the area of its flats and arcs") {
    const Case c = read_case("cases/cable-hook/case.toml");
    double length = 0.0;  // of the mid-line: a strip of even thickness has its length times that as area
    for (const double flat : c.part.flats) length += flat;
    for (const Bend& bend : c.part.bends)
        length += std::abs(bend.angle) * (bend.inside_radius + 0.5 * c.thickness);
    CHECK(tool::ArcOutline(part_outline(c)).area() == doctest::Approx(length * c.thickness).epsilon(1e-9));
}

TEST_CASE("file names are safe, and two tools never share one") {
    CHECK(safe_file_name("Two-way block 8/10") == "two-way-block-8-10");
    CHECK(safe_file_name("../../etc/passwd") == "etc-passwd");
    CHECK(safe_file_name("\u00b0\u00b0") == "x");
    CHECK(safe_file_name(std::string(300, 'a')).size() == 60);
    Case c = read_case("cases/one-bend-dc01/case.toml");
    c.tools[0].name = "a b";
    c.tools[1].name = "a/b";
    c.steps.clear();
    const std::vector<Drawing> all = all_drawings(c, flat_pattern(c, {}), drawing::Tolerances::none);
    CHECK(all[0].file == "tool-a-b");
    CHECK(all[1].file == "tool-a-b-2");
    CHECK(all.back().file == "part");
}
