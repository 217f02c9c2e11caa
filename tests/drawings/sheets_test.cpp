// Sheets: words apart from one another, on the paper, off the lines of the drawing; true to scale.
//
// Random tools of every kind, and the tools, blanks and parts of the cases. Words are taken by the boxes that
// they fill when they are painted. Dimensions without room are few, and are told on the sheet.

#include <doctest/doctest.h>

#include <cmath>
#include <filesystem>

#include "render/picture/painter.h"
#include "scenes/documents/drawings/blank_sheet.h"
#include "scenes/documents/drawings/drawings.h"
#include "scenes/documents/drawings/tool_sheet.h"
#include "scenes/files/case/read_case.h"
#include "scenes/files/case/tool_outline.h"
#include "tests/files/random_tool.h"

using namespace overbend;
using namespace overbend::documents;
using namespace overbend::files;
using namespace overbend::job;
using namespace overbend::drawing;
using namespace overbend::picture;

namespace {

// Straight stretches of black strokes that are no hatching: outline, dimensions, leaders.
std::vector<std::pair<Point, Point>> strokes_of(const DrawingList& list) {
    std::vector<std::pair<Point, Point>> found;
    for (const Item& item : list.items) {
        const Shape* shape = std::get_if<Shape>(&item);
        if (!shape || !shape->stroke || shape->line_width < 0.2 || !shape->dash.empty()) continue;
        Point at = Point::Zero();
        for (const Segment& s : shape->path) {
            if (s.verb == Verb::line) found.emplace_back(at, s.to);
            at = s.to;
        }
    }
    return found;
}

bool crosses(const Rect& box, const Point& a, const Point& b) {
    for (int i = 0; i <= 200; ++i) {
        const Point p = a + i / 200.0 * (b - a);
        if (p.x() > box.x && p.x() < box.right() && p.y() > box.y && p.y() < box.bottom()) return true;
    }
    return false;
}

int check_sheet(const DrawnSheet& drawn) {
    const DrawingList& list = drawn.list;
    const Rect paper{0.0, 0.0, static_cast<double>(list.width), static_cast<double>(list.height)};
    std::vector<std::pair<std::string, Rect>> words;
    for (const Item& item : list.items)
        if (const Text* text = std::get_if<Text>(&item)) {
            CHECK(text->size >= 2.4);
            words.emplace_back(text->words, painted_box(*text));
        }
    const auto strokes = strokes_of(list);
    for (std::size_t i = 0; i < words.size(); ++i) {
        CAPTURE(words[i].first);
        CHECK(holds(grown(paper, -9.0), words[i].second));
        for (std::size_t j = i + 1; j < words.size(); ++j) {
            CAPTURE(words[j].first);
            CHECK_FALSE(overlap(words[i].second, words[j].second));
        }
        int crossed = 0;
        for (const auto& [a, b] : strokes) crossed += crosses(words[i].second, a, b) ? 1 : 0;
        CHECK(crossed == 0);
    }
    return static_cast<int>(drawn.missing.size());
}

}  // namespace

TEST_CASE("random tools of every kind have readable drawings") {
    std::mt19937 random(77);
    int missing = 0, dimensions = 0;
    for (int kind = 0; kind < tests::tool_kinds; ++kind) {
        for (int i = 0; i < 8; ++i) {
            CAPTURE(kind);
            CAPTURE(i);
            const DrawingSheet sheet =
                tool_sheet(tests::random_tool(kind, random),
                           i % 2 == 0 ? drawing::Tolerances::none : drawing::Tolerances::iso_2768_m);
            missing += check_sheet(draw_sheet(sheet));
            dimensions += static_cast<int>(sheet.dimensions.size());
        }
    }
    MESSAGE(missing, " of ", dimensions, " dimensions do not fit");
    CHECK(missing < 0.05 * dimensions);
}

TEST_CASE("the drawings of every case are readable, and none of their sizes is left out") {
    for (const auto& entry : std::filesystem::directory_iterator("cases")) {
        if (!entry.is_directory()) continue;
        CAPTURE(entry.path().string());
        Case c = read_case(entry.path() / "case.toml", Needs::drawing_alone);
        c.steps.clear();  // the blank by rule: nothing is run here
        for (const Drawing& drawing : all_drawings(c, flat_pattern(c, {}), drawing::Tolerances::none)) {
            CAPTURE(drawing.file);
            CHECK(check_sheet(drawing.sheet) == 0);
        }
    }
}

TEST_CASE("an outline stands on paper as large as the scale says, in SVG and PDF") {
    const Case c = read_case("cases/one-bend-dc01/case.toml");
    const DrawnSheet drawn = draw_sheet(tool_sheet(c.tools[0], drawing::Tolerances::none));
    const tool::Box box = tool_outline(c.tools[0], 1).box();
    // the outline is the thick closed path with curves or lines that is no frame: find it by its box
    bool found = false;
    for (const Item& item : drawn.list.items) {
        const Shape* shape = std::get_if<Shape>(&item);
        if (!shape || shape->path.size() < 4 || shape->line_width < 0.45) continue;
        Point low(1e9, 1e9), high(-1e9, -1e9);
        for (const Segment& s : shape->path)
            if (s.verb != Verb::close) low = low.cwiseMin(s.to), high = high.cwiseMax(s.to);
        found = found || (std::abs(high.x() - low.x() - drawn.scale * (box.high.x() - box.low.x())) < 1e-9 &&
                          std::abs(low.y() - drawn.origin.y() + drawn.scale * box.high.y()) < 1e-9);
    }
    CHECK(found);
    const std::string svg = svg_bytes_in_mm(drawn.list);
    CHECK(svg.find("width=\"" + std::to_string(drawn.list.width) + "mm\" height=\"" +
                   std::to_string(drawn.list.height) + "mm\" viewBox=\"0 0 " +
                   std::to_string(drawn.list.width) + " " + std::to_string(drawn.list.height) + "\"") !=
          std::string::npos);
    CHECK(pdf_bytes_in_mm({drawn.list}).find("/MediaBox") != std::string::npos);
}

TEST_CASE("scales are told as the standard has them, and what cannot be drawn is refused") {
    CHECK(scale_words(5.0) == "5:1");
    CHECK(scale_words(1.0) == "1:1");
    CHECK(scale_words(0.02) == "1:50");
    CHECK_THROWS(draw_sheet(DrawingSheet{}));
}

// 8 x 3 mm about (35, 10): its sides run from 2.5 mm on one side of the middle to 2.5 on the other, 1.5 mm
// beside it. Counter-clockwise, each piece begins where the last ends; the half circles bulge outwards.
TEST_CASE("the outline of a slot lies along the strip or across it") {
    Case c = read_case("cases/one-bend-dc01/case.toml");
    for (const bool across : {false, true}) {
        CAPTURE(across);
        c.cutouts = {across ? Cutout{35.0, 10.0, 8.0, 3.0} : Cutout{35.0, 10.0, 3.0, 8.0}};
        const std::vector<tool::Piece> slot = blank_outlines(c, make_blank(c)).back();
        REQUIRE(slot.size() == 4);
        const tool::Vec2 middle(35.0, 10.0);
        for (std::size_t i = 0; i < 4; ++i) {
            const tool::Piece &piece = slot[i], &next = slot[(i + 1) % 4];
            CHECK((piece.end - next.start).norm() < 1e-12);
            const tool::Vec2 from = piece.start - middle;
            CHECK(std::abs(across ? from.y() : from.x()) == doctest::Approx(2.5));
            CHECK(std::abs(across ? from.x() : from.y()) == doctest::Approx(1.5));
            if (piece.is_arc()) {
                CHECK(piece.radius == doctest::Approx(1.5));
                CHECK(piece.sweep > 0.0);
                const tool::Vec2 centre = piece.centre - middle;
                CHECK(std::abs(across ? centre.y() : centre.x()) == doctest::Approx(2.5));
                CHECK(from.x() * (piece.end - middle).y() - from.y() * (piece.end - middle).x() > 0.0);
            }
        }
    }
}
