// Outlines from hand-made files: polylines with bulges, gaps, branches, several outlines.

#include <doctest/doctest.h>

#include <cmath>

#include "sim/units.h"
#include "tests/dxf/dxf_files.h"

using namespace overbend;
using namespace overbend::tests;

namespace {

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

const std::string square = line(0, 0, 10, 0) + line(10, 0, 10, 10) + line(10, 10, 0, 10) + line(0, 10, 0, 0);

}  // namespace

TEST_CASE("polylines with bulges are lines and arcs") {
    // a slot of 20 x 10: two lines, two half circles
    const std::vector<overbend::tests::Corner> slot = {{0, 0, 0}, {10, 0, 1}, {10, 10, 0}, {0, 10, 1}};
    for (const std::string& text : {light_polyline(slot, Ring::closed), heavy_polyline(slot, Ring::closed)}) {
        const tool::ArcOutline outline = outline_of(dxf_file(text));
        REQUIRE(outline.pieces().size() == 4);
        CHECK(outline.area() == doctest::Approx(100.0 + 25.0 * pi).epsilon(1e-12));
        CHECK(outline.pieces()[1].radius == doctest::Approx(5.0).epsilon(1e-12));
        CHECK((outline.pieces()[1].centre - tool::Vec2(10.0, 5.0)).norm() < 1e-12);
        CHECK(outline.box().high.x() == doctest::Approx(15.0));
    }
    // a quarter and three quarters of a turn, either sense
    for (const double sign : {1.0, -1.0}) {
        const double quarter = sign * std::tan(pi / 8.0);
        const tool::ArcOutline outline = outline_of(
            dxf_file(light_polyline({{0, 0, 0}, {20, 0, quarter}, {20, 10, 0}, {0, 10, 0}}, Ring::closed)));
        const double segment = 50.0 * (pi / 4.0) - 25.0;  // of radius 10 / sqrt 2: r2 (a - sin a) / 2
        CHECK(outline.area() == doctest::Approx(200.0 + sign * segment).epsilon(1e-12));
    }
    const double most = std::tan(3.0 * pi / 8.0);
    const tool::ArcOutline lobe =
        outline_of(dxf_file(light_polyline({{0, 0, most}, {10, 0, 0}}, Ring::closed)));
    CHECK(lobe.area() == doctest::Approx(50.0 * (0.75 * pi) + 25.0).epsilon(1e-12));
}

TEST_CASE("an open polyline is closed by what else is drawn, a circle alone is an outline") {
    const std::string cup = light_polyline({{0, 10, 0}, {0, 0, 0}, {10, 0, 0}, {10, 10, 0}}, Ring::open);
    CHECK(outline_of(dxf_file(cup + arc(5, 10, 5, 0, 180))).area() ==
          doctest::Approx(100.0 + 12.5 * pi).epsilon(1e-12));
    const std::string round = groups_text({{0, "CIRCLE"}, {8, "0"}, {10, "3"}, {20, "4"}, {40, "5"}});
    const tool::ArcOutline circle = outline_of(dxf_file(round));
    CHECK(circle.area() == doctest::Approx(25.0 * pi).epsilon(1e-12));
    CHECK(circle.box().low.y() == doctest::Approx(-1.0));
}

TEST_CASE("a gap within the tolerance is closed, a wider one is told with place and width") {
    const auto gapped = [](double gap) {
        return dxf_file(line(0, 0, 10, 0) + line(10, 0, 10, 10) + line(10, 10, 0, 10) + line(0, 10, 0, gap));
    };
    CHECK(outline_of(gapped(0.009)).area() == doctest::Approx(100.0).epsilon(1e-3));
    const Mistake wide = mistake_of(gapped(0.02));
    CHECK(wide.line > 0);
    CHECK(has(wide.wrong, "open at (0, 0) mm"));
    CHECK(has(wide.wrong, "0.02 mm away"));
    CHECK(has(wide.right, "gap_mm"));
    CHECK(mistake_of(gapped(0.02), "", 0.03).line == -1);
    CHECK_FALSE(has(mistake_of(gapped(3.0)).right, "gap_mm"));
}

TEST_CASE("branches, doubled lines and a second outline are refused") {
    CHECK(has(mistake_of(dxf_file(square + line(0, 0, 10, 10))).wrong, "more than two"));
    CHECK(has(mistake_of(dxf_file(square + line(0, 0, 10, 0))).wrong, "more than two"));
    const Mistake two = mistake_of(
        dxf_file(square + groups_text({{0, "CIRCLE"}, {8, "holes"}, {10, "5"}, {20, "5"}, {40, "2"}})));
    CHECK(has(two.wrong, "more than one outline: another passes (7, 5) mm"));
    CHECK(has(two.right, "0 4, holes 1"));
    CHECK(two.line == 64);
    CHECK(has(mistake_of(dxf_file(line(0, 0, 10, 0))).wrong, "open at"));
    CHECK(has(mistake_of(
                  dxf_file(line(0, 0, 10, 10) + line(10, 10, 10, 0) + line(10, 0, 0, 10) + line(0, 10, 0, 0)))
                  .wrong,
              "cross"));
}

TEST_CASE("a layer alone is taken when it is named") {
    const std::string both = dxf_file(square + line(5, -3, 5, 13, "AXIS") + line(0, 0, 3, 3, "AXIS"));
    CHECK(mistake_of(both).line > 0);
    CHECK(outline_of(both, "0").area() == doctest::Approx(100.0));
    const Mistake none = mistake_of(both, "CONTOUR");
    CHECK(has(none.wrong, "no lines or arcs on the layer \"CONTOUR\""));
    CHECK(has(none.right, "0, AXIS"));
}
