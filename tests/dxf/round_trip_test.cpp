// Outlines of tools, written and read: the same lines and arcs come back.
//
// Allowed  1e-6 mm for every end, centre, radius and arc's length; measured 1.2e-11 in 2100 random tools
//          (arcs of large radius: the format gives their ends by angles).

#include <doctest/doctest.h>

#include <algorithm>
#include <locale>

#include "scenes/files/case/tool_outline.h"
#include "scenes/files/dxf/chain.h"
#include "scenes/files/dxf/write_dxf.h"
#include "tests/dxf/dxf_files.h"
#include "tests/files/random_tool.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::tests;
using tool::ArcOutline;
using tool::Piece;

namespace {

std::string text_of(std::vector<Piece> pieces) {
    DxfDrawing drawing;
    drawing.layers = {{"CONTOUR", DxfStroke::continuous, 7}};
    for (const Piece& piece : pieces) drawing.entities.push_back(dxf_piece("CONTOUR", piece));
    return dxf_text(drawing);
}

// The greatest difference of ends, centres and radii, in mm, when the found outline begins at its piece
// `first`; 1e9 for another count or kind of pieces.
double difference(const ArcOutline& made, const ArcOutline& found, std::size_t first) {
    const std::size_t count = made.pieces().size();
    if (found.pieces().size() != count) return 1e9;
    double most = 0.0;
    for (std::size_t i = 0; i < count; ++i) {
        const Piece &a = made.pieces()[i], &b = found.pieces()[(first + i) % count];
        if (a.is_arc() != b.is_arc()) return 1e9;
        most = std::max({most, (a.start - b.start).norm(), (a.end - b.end).norm()});
        if (a.is_arc())
            most = std::max({most, (a.centre - b.centre).norm(), std::abs(a.radius - b.radius),
                             std::abs(a.sweep - b.sweep) * a.radius});
    }
    return most;
}

double least_difference(const ArcOutline& made, const ArcOutline& found) {
    double least = 1e9;
    for (std::size_t first = 0; first < made.pieces().size(); ++first)
        least = std::min(least, difference(made, found, first));
    return least;
}

struct Comma : std::numpunct<char> {
    char do_decimal_point() const override { return ','; }
    char do_thousands_sep() const override { return '.'; }
    std::string do_grouping() const override { return "\3"; }
};

}  // namespace

TEST_CASE("every kind of tool comes back as it was, piece after piece") {
    std::mt19937 random(20260);
    double most = 0.0;
    for (int kind = 0; kind < tool_kinds; ++kind) {
        for (int i = 0; i < 150; ++i) {
            const ArcOutline made = tool_outline(random_tool(kind, random), 1);
            const ArcOutline found = outline_of(text_of(made.pieces()));
            most = std::max(most, least_difference(made, found));
        }
    }
    MESSAGE("largest difference in mm: ", most);
    CHECK(most < 1e-6);
}

TEST_CASE("in any order and sense of its pieces the same outline is found") {
    std::mt19937 random(4711);
    for (int kind = 0; kind < tool_kinds; ++kind) {
        for (int i = 0; i < 40; ++i) {
            const ArcOutline made = tool_outline(random_tool(kind, random), 1);
            std::vector<Piece> pieces = made.pieces();
            std::shuffle(pieces.begin(), pieces.end(), random);
            for (Piece& piece : pieces) {
                if (random() % 2 == 0) continue;
                std::swap(piece.start, piece.end);
                piece.sweep = -piece.sweep;
            }
            CHECK(least_difference(made, outline_of(text_of(pieces))) < 1e-6);
        }
    }
}

TEST_CASE("what was written twice is the same file") {
    std::mt19937 random(3);
    const ArcOutline made = tool_outline(random_tool(1, random), 1);
    CHECK(text_of(made.pieces()) == text_of(made.pieces()));
}

TEST_CASE("a locale with a decimal comma changes nothing, and stays as it was") {
    std::mt19937 random(5);
    const ArcOutline made = tool_outline(random_tool(0, random), 1);
    const std::string plain = text_of(made.pieces());
    const std::locale before = std::locale::global(std::locale(std::locale::classic(), new Comma));
    const std::string text = text_of(made.pieces());
    const ArcOutline found = outline_of(text);
    const bool kept = std::use_facet<std::numpunct<char>>(std::locale()).decimal_point() == ',';
    std::locale::global(before);
    CHECK(text == plain);
    CHECK(least_difference(made, found) < 1e-6);
    CHECK(kept);
}

TEST_CASE("ends scattered within the gap are closed, and move no further") {
    std::mt19937 random(99);
    std::uniform_real_distribution<double> aside(-0.001, 0.001);
    for (int kind = 0; kind < tool_kinds; ++kind) {
        for (int i = 0; i < 20; ++i) {
            const ArcOutline made = tool_outline(random_tool(kind, random), 1);
            std::vector<Piece> pieces = made.pieces();
            bool sturdy = true;
            for (const Piece& piece : pieces) sturdy = sturdy && (piece.end - piece.start).norm() > 0.5;
            if (!sturdy) continue;  // scatter of a tenth of a piece makes another outline
            for (Piece& piece : pieces)
                if (!piece.is_arc()) piece.start += tool::Vec2(aside(random), aside(random));
            const ArcOutline found = outline_of(text_of(pieces));
            REQUIRE(found.pieces().size() == made.pieces().size());
            const std::size_t count = pieces.size();
            double least = 1e9;
            for (std::size_t first = 0; first < count; ++first) {
                double most = 0.0;
                for (std::size_t k = 0; k < count; ++k)
                    most = std::max(
                        most, (found.pieces()[(first + k) % count].start - made.pieces()[k].start).norm());
                least = std::min(least, most);
            }
            CHECK(least < 0.0015);
        }
    }
}

TEST_CASE("numbers that are none and layers that are not there are refused") {
    DxfDrawing drawing;
    drawing.layers = {{"CONTOUR", DxfStroke::continuous, 7}};
    drawing.entities = {{"CONTOUR", DxfLine{{0.0, 0.0}, {NAN, 1.0}}}};
    CHECK_THROWS_AS(dxf_text(drawing), std::invalid_argument);
    drawing.entities = {{"OTHER", DxfLine{{0.0, 0.0}, {1.0, 1.0}}}};
    CHECK_THROWS_AS(dxf_text(drawing), std::invalid_argument);
}
