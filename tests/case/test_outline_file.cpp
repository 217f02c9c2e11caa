// An outline from a drawing: where it comes to stand, how it is written, and what is said when it is none.

#include <doctest/doctest.h>

#include <cstdlib>
#include <filesystem>

#include "scenes/files/case/read_case.h"
#include "scenes/files/case/tool_outline.h"
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

CaseError mistake_with(const std::string& text, const std::string& drawing) {
    const OwnFolder folder;
    folder.write("block.dxf", drawing);
    try {
        read_case(folder.write("case.toml", text));
    } catch (const CaseError& error) {
        return error;
    }
    FAIL("it was taken");
    std::abort();
}

}  // namespace

TEST_CASE("the drawing is turned about its origin, which becomes the tool's own") {
    const OwnFolder folder;
    folder.write("block.dxf", block_drawing);
    const Case job = read_case(folder.write("case.toml", drawn_case));
    const tool::ArcOutline outline = tool_outline(job.tools[0], 1);
    CHECK(outline.pieces().size() == 5);
    CHECK(outline.area() == doctest::Approx(100.0 - 4.0 + std::atan(1.0) * 4.0).epsilon(1e-3));
    // (x, y) of the file comes to (10 - y, x - 5)
    CHECK(outline.box().low.x() == doctest::Approx(0.0));
    CHECK(outline.box().high.x() == doctest::Approx(10.0));
    CHECK(outline.box().low.y() == doctest::Approx(-5.0));
    CHECK(outline.box().high.y() == doctest::Approx(5.0));
    bool arc = false;
    for (const tool::Piece& piece : outline.pieces())
        arc = arc || (piece.is_arc() && (piece.centre - tool::Vec2(2.0, 3.0)).norm() < 1e-12);
    CHECK(arc);
}

TEST_CASE("it is written as the drawing that it was, and reads back from any folder") {
    const OwnFolder folder, elsewhere;
    folder.write("drawings/block.dxf", block_drawing);
    const Case job = read_case(
        folder.write("jobs/case.toml", replaced(drawn_case, "\"block.dxf\"", "\"../drawings/block.dxf\"")));
    const std::string text = write_case(job);
    CHECK(has(text, "\nfile = \"" + fs::canonical(folder.path()).string() + "/drawings/block.dxf\"\n"));
    CHECK(has(text, "\nlayer = \"CONTOUR\"\ngap_mm = 0.02\norigin_mm = [5.0, 10.0]\nturn_deg = 90.0\n"));
    CHECK_FALSE(has(text, "points"));
    const Case back = read_case(elsewhere.write("case.toml", text));
    for (const std::string& difference : differences(job, back)) FAIL_CHECK(difference);
    CHECK(write_case(back) == text);
}

TEST_CASE(
    "what is wrong with the drawing is told with its line, what is wrong with the key with the case's") {
    const CaseError open =
        mistake_with(replaced(drawn_case, "gap_mm = 0.02", "gap_mm = 0.01"), block_drawing);
    CHECK(has(open.file, "block.dxf"));
    CHECK(has(open.wrong, "open at (0, 0) mm: the nearest open end is 0.015 mm away"));
    CHECK(has(open.right, "gap_mm"));
    CHECK(open.line > 0);
    const CaseError layer = mistake_with(replaced(drawn_case, "\"CONTOUR\"", "\"contour\""), block_drawing);
    CHECK(has(layer.wrong, "no lines or arcs on the layer"));
    CHECK(has(layer.right, "AXIS, CONTOUR"));
    const CaseError missing = mistake_with(replaced(drawn_case, "block.dxf", "blok.dxf"), block_drawing);
    CHECK(missing.key == "tool[1].file");
    CHECK(has(missing.wrong, "no such file"));
    const CaseError both = mistake_with(
        replaced(drawn_case, "layer =", "points = [ { x_mm = 0, y_mm = 0 } ]\nlayer ="), block_drawing);
    CHECK(has(both.wrong, "has points and a file"));
    const CaseError neither = mistake_with(replaced(drawn_case, "file = \"block.dxf\"\n", ""), block_drawing);
    CHECK(neither.key == "tool[1].layer");
    CHECK(has(neither.right, "file"));
}
