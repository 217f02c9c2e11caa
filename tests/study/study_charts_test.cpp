// Charts of a study: columns that hold all values, words that can be read.

#include <doctest/doctest.h>

#include <cmath>

#include "render/chart/grid_curves.h"
#include "render/chart/histogram.h"
#include "render/chart/shares.h"
#include "sim/errors.h"
#include "tests/chart/legible.h"

using namespace overbend;

namespace {

std::vector<double> bell(int count) {
    std::vector<double> values;
    for (int i = 0; i < count; ++i) values.push_back(90.0 + std::sin(0.7 * i) + std::sin(1.3 * i));
    return values;
}

}  // namespace

TEST_CASE("histogram: its columns hold all values, and are as many as suit them") {
    for (const int count : {2, 50, 5000}) {
        const std::vector<double> values = bell(count), edges = chart::column_edges(values);
        CHECK(edges.size() >= 9);
        CHECK(edges.size() <= 61);
        for (const double v : values) {
            CHECK(v >= edges.front());
            CHECK(v <= edges.back() + 1e-9);
        }
    }
    const std::vector<double> alike = chart::column_edges({1.0, 1.0, 1.0});
    CHECK(alike.front() < 1.0);
    CHECK(alike.back() > 1.0);
}

TEST_CASE("charts of a study: words are large enough, whole and apart, in both themes") {
    chart::Histogram histogram{"angle of 'lip'", "angle of 'lip', deg", bell(500), 90.0, 1.0,
                               {"Mean 90.0 deg"}};
    chart::Shares shares{"What the scatter comes from", {}, {"Black: 95 % interval."}};
    for (const char* name : {"thickness_mm", "strength", "friction", "ram_mm"})
        shares.bars.push_back({name, 0.3, 0.2, 0.4, 0.35, 0.25, 0.45});
    const chart::GridCurves curves{"springback",
                                   "nose_radius_mm",
                                   "springback, deg",
                                   {{"friction 0.05", {{0.5, 2.0}, {1.0, 3.0}, {2.0, 5.0}}},
                                    {"friction 0.15", {{0.5, 2.2}, {1.0, 3.1}, {2.0, 5.3}}}}};
    for (const picture::Theme theme : {picture::Theme::light, picture::Theme::dark}) {
        const chart::ChartSize size{800, 533};
        tests::check_legible(chart::draw_histogram(histogram, size, theme), 11.0, 8);
        tests::check_legible(chart::draw_shares(shares, size, theme), 11.0, 8);
        tests::check_legible(chart::draw_grid_curves(curves, size, theme), 11.0, 8);
    }
    CHECK(tests::says(chart::draw_shares(shares, {}, picture::Theme::light), "friction"));
    CHECK(tests::says(chart::draw_grid_curves(curves, {}, picture::Theme::light), "friction 0.15"));
}

TEST_CASE("charts of a study: what cannot be drawn is refused") {
    CHECK_THROWS_AS(chart::draw_histogram({"", "", {1.0}, {}, {}, {}}, {}, picture::Theme::light),
                    OutOfRange);
    CHECK_THROWS_AS(chart::draw_histogram({"", "", {1.0, NAN}, {}, {}, {}}, {}, picture::Theme::light),
                    OutOfRange);
    CHECK_THROWS_AS(chart::draw_shares({}, {}, picture::Theme::light), OutOfRange);
    CHECK_THROWS_AS(chart::draw_grid_curves({}, {}, picture::Theme::light), OutOfRange);
}
