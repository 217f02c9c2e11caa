// Charts: curves pass through their data, limits are there, words can be read at every size in both themes.

#include <doctest/doctest.h>

#include <cmath>

#include "render/chart/cost_over_batch.h"
#include "render/chart/force_travel.h"
#include "render/chart/moment_curvature.h"
#include "render/chart/stress_through_thickness.h"
#include "sim/errors.h"
#include "tests/chart/legible.h"
#include "tests/picture/synthetic_recording.h"

using namespace overbend;
using namespace overbend::chart;
using namespace overbend::picture;
using overbend::tests::check_legible;
using overbend::tests::contrast_of;
using overbend::tests::says;

namespace {

const ChartSize sizes[] = {{960, 640}, {480, 320}, {1920, 1280}, {640, 900}, {1600, 500}};
const Theme themes[] = {Theme::light, Theme::dark};

// Stroked paths of this colour, in the order of the list.
std::vector<const Shape*> lines_in(const DrawingList& list, const Colour& colour) {
    std::vector<const Shape*> found;
    for (const Item& item : list.items) {
        const Shape* shape = std::get_if<Shape>(&item);
        if (shape && shape->stroke && shape->stroke->red == colour.red &&
            shape->stroke->green == colour.green && shape->stroke->blue == colour.blue && !shape->fill &&
            shape->clip)
            found.push_back(shape);
    }
    return found;
}

ForceTravel some_force(const std::vector<ForceLimit>& limits) {
    ForceTravel chart = force_travel(tests::synthetic_recording(), 20.0, 12.0);
    chart.title = "Stroke 1, lip: force over travel";
    chart.limits = limits;
    return chart;
}

MomentCurvature some_moment(int bends) {
    MomentCurvature chart;
    chart.title = "Stroke 1: moment over curvature";
    for (int i = 0; i < bends; ++i)
        chart.bends.push_back(moment_curve(tests::synthetic_recording(),
                                           i == 0 ? "channel left" : "channel right", 10.0, 26.0));
    return chart;
}

CostOverBatch some_cost() {
    return {"Cost of a part",
            "EUR",
            {{"simple tools", {{1, 212}, {10, 23}, {100, 4.1}, {1000, 2.2}, {10000, 2.0}}},
             {"one tool for all bends", {{1, 9000}, {10, 900}, {100, 90.5}, {1000, 9.4}, {10000, 1.3}}},
             {"by hand", {{1, 30}, {10000, 25}}}}};
}

}  // namespace

TEST_CASE("words of all charts can be read, at all sizes and in both themes") {
    StressThroughThickness stress = stress_through_thickness(tests::synthetic_recording(), 10.0, 26.0);
    stress.title = "Stroke 1, bend lip: stress through the thickness";
    for (const ChartSize& size : sizes)
        for (const Theme theme : themes) {
            CAPTURE(size.width);
            CAPTURE(size.height);
            const double least = size.height / 45.0;
            for (const std::vector<ForceLimit>& limits :
                 {std::vector<ForceLimit>{},
                  {{"Rated force of the press", 60.0}},
                  {{"Rated force of the press", 3.0}, {"The die bears", 2.6}}})
                check_legible(draw_force_travel(some_force(limits), size, theme), least, 12);
            check_legible(draw_moment_curvature(some_moment(1), size, theme), least, 12);
            check_legible(draw_moment_curvature(some_moment(2), size, theme), least, 14);
            check_legible(draw_stress_through_thickness(stress, size, theme), least, 12);
            check_legible(draw_cost_over_batch(some_cost(), size, theme), least, 12);
        }
}

TEST_CASE("curves can be told from the plot behind them, and by more than their colour") {
    for (const Theme theme : themes) {
        const ChartLook look{theme, 20.0};
        for (int i = 0; i < 5; ++i) {
            CAPTURE(i);
            CHECK(contrast_of(curve_look(look, i).colour, theme_colours(theme).stage) > 3.0);
            for (int j = 0; j < i; ++j) CHECK(curve_look(look, i).dash != curve_look(look, j).dash);
        }
        CHECK(contrast_of(theme_colours(theme).ink, theme_colours(theme).stage) > 4.5);
        CHECK(contrast_of(theme_colours(theme).muted, theme_colours(theme).page) > 4.5);
    }
}

TEST_CASE("force over travel is the recording's, in kN on the strip's width") {
    const stroke::Recording r = tests::synthetic_recording();
    const ForceTravel chart = force_travel(r, 20.0);
    REQUIRE(chart.loading.size() > 10);
    const ForcePoint& stop = chart.loading.back();
    const stroke::State* held = nullptr;
    for (const stroke::State& s : r.states)
        if (s.phase == stroke::Phase::held) held = &s;
    REQUIRE(held);
    CHECK(stop.travel == held->travel);
    CHECK(stop.force == doctest::Approx(held->punch_force * 20.0 / 1000.0));
    REQUIRE(chart.going_back.size() == 3);
    CHECK(chart.going_back.front().force == stop.force);
    CHECK_FALSE(chart.now);
}

TEST_CASE("the curve passes through its points, and the dot stands at its instant") {
    const ForceTravel chart = some_force({});
    DrawingList list = draw_force_travel(chart, {}, Theme::light);
    const ChartLook look = chart_look({}, Theme::light);
    const std::vector<const Shape*> curves = lines_in(list, curve_look(look, 0).colour);
    REQUIRE(curves.size() == 1);
    REQUIRE(curves[0]->path.size() == chart.loading.size());
    // By the axes' own numbers: where "0.5" and "1.5" stand, half a kN and one and a half are.
    std::optional<double> half, more;
    for (const Text& text : tests::texts_of(list)) {
        if (text.across == Across::right && text.words == "0.5") half = text.at.y();
        if (text.across == Across::right && text.words == "1.5") more = text.at.y();
    }
    REQUIRE(half);
    REQUIRE(more);
    const double to_middle = baseline_for_middle(0.0, look.unit);
    for (std::size_t i = 0; i < chart.loading.size(); ++i) {
        const double y = *half - to_middle + (chart.loading[i].force - 0.5) * (*more - *half);
        CHECK(curves[0]->path[i].to.y() == doctest::Approx(y).epsilon(1e-6));
        if (i > 0) CHECK(curves[0]->path[i].to.x() >= curves[0]->path[i - 1].to.x());
    }
    const double dot_y = *half - to_middle + (chart.now->force - 0.5) * (*more - *half);
    bool found = false;
    for (const Item& item : list.items) {
        const Shape* shape = std::get_if<Shape>(&item);
        if (!shape || !shape->fill || shape->path.size() != 6) continue;  // a circle
        if (std::abs(shape->path[0].to.y() - dot_y) < 0.01 &&
            contrast_of(*shape->fill, theme_colours(Theme::light).ink) < 1.01)
            found = true;
    }
    CHECK(found);
}

TEST_CASE("a limit near the curve is drawn as a line with its words, a far one is told") {
    const ChartLook look = chart_look({}, Theme::light);
    const Colour& ink = theme_colours(Theme::light).ink;
    const DrawingList near =
        draw_force_travel(some_force({{"Rated force of the press", 3.0}}), {}, Theme::light);
    REQUIRE(lines_in(near, ink).size() == 1);
    const Path& line = lines_in(near, ink)[0]->path;
    CHECK(line[0].to.y() == line[1].to.y());
    CHECK(line[0].to.x() < line[1].to.x());
    CHECK(says(near, "Rated force of the press: 3 kN"));
    const DrawingList far =
        draw_force_travel(some_force({{"Rated force of the press", 60.0}}), {}, Theme::light);
    CHECK(lines_in(far, ink).empty());
    CHECK(says(far, "Rated force of the press: 60 kN"));
    CHECK(says(far, "times the peak"));
    CHECK(lines_in(near, curve_look(look, 0).colour).size() == 1);
}

TEST_CASE("the moment's curve has its stop and its end marked, and says where it was taken") {
    const MomentCurvature chart = some_moment(1);
    CHECK(chart.bends[0].path.loading.size() == 26);
    CHECK(chart.bends[0].path.unloading.front().moment == chart.bends[0].path.loading.back().moment);
    CHECK(chart.bends[0].path.unloading.back().curvature < chart.bends[0].path.loading.back().curvature);
    const DrawingList list = draw_moment_curvature(chart, {}, Theme::light);
    CHECK(says(list, "loaded 0."));
    CHECK(says(list, "free 0."));
    CHECK(says(list, "from the blank's left end"));
}

TEST_CASE("the elastic core is shaded and told, or said to be too thin") {
    StressThroughThickness chart = stress_through_thickness(tests::synthetic_recording(), 10.0, 26.0);
    const auto bands = [](const DrawingList& list) {
        int count = 0;
        for (const Item& item : list.items)
            if (const Shape* s = std::get_if<Shape>(&item))
                count += s->fill && s->fill->opacity < 1.0 ? 1 : 0;
        return count;
    };
    chart.core = ElasticCore{-0.1, 0.15};
    const DrawingList thick = draw_stress_through_thickness(chart, {}, Theme::light);
    CHECK(bands(thick) == 1);
    CHECK(says(thick, "elastic core (shaded) is 0.25 mm"));
    chart.core = ElasticCore{0.1, 0.101};
    const DrawingList thin = draw_stress_through_thickness(chart, {}, Theme::light);
    CHECK(bands(thin) == 0);
    CHECK(says(thin, "too thin to draw"));
    chart.core.reset();
    CHECK(says(draw_stress_through_thickness(chart, {}, Theme::light), "all layers are plastic"));
}

// Curves that are straight on logarithmic axes: 1000 / n and a constant 10 meet at 100 parts.
TEST_CASE("costs cross where the curves meet on logarithmic axes") {
    const std::vector<CostCurve> curves = {{"flat", {{1, 10}, {10000, 10}}},
                                           {"falling", {{1, 1000}, {1000, 1}, {10000, 0.1}}}};
    const std::vector<CostCrossing> found = crossings(curves);
    REQUIRE(found.size() == 1);
    CHECK(found[0].at.batch == doctest::Approx(100.0).epsilon(1e-9));
    CHECK(found[0].at.per_part == doctest::Approx(10.0).epsilon(1e-9));
    CHECK(found[0].before == 0);
    CHECK(found[0].after == 1);
    CHECK(crossings({curves[0]}).empty());
    CHECK(crossings({{"a", {{1, 10}, {10, 10}}}, {"b", {{100, 20}, {1000, 5}}}}).empty());  // no common batch
    const DrawingList list = draw_cost_over_batch({"", "EUR", curves}, {}, Theme::light);
    CHECK(says(list, "falling cheaper than flat from 100 parts"));
}

TEST_CASE("charts without data are refused by name") {
    CHECK_THROWS_AS(draw_cost_over_batch({"", "EUR", {}}, {}, Theme::light), OutOfRange);
    CHECK_THROWS_WITH_AS(
        draw_cost_over_batch({"", "EUR", {{"by hand", {{10, 1}, {5, 1}}}}}, {}, Theme::light),
        doctest::Contains("by hand"), OutOfRange);
    CHECK_THROWS_WITH_AS(draw_cost_over_batch({"", "EUR", {{"by hand", {{1, 1}, {5, 0}}}}}, {}, Theme::light),
                         doctest::Contains("by hand"), OutOfRange);
    CHECK_THROWS_AS(draw_force_travel({}, {}, Theme::light), OutOfRange);
    CHECK_THROWS_AS(draw_moment_curvature({}, {}, Theme::light), OutOfRange);
    CHECK_THROWS_AS(draw_stress_through_thickness({}, {}, Theme::light), OutOfRange);
    CHECK_THROWS_AS(draw_force_travel(some_force({}), {100, 640}, Theme::light), OutOfRange);
    DrawingList list;
    CHECK_THROWS_WITH_AS(add_cost_over_batch(list, {0, 0, 80, 60}, some_cost(), {Theme::light, 12.0}),
                         doctest::Contains("80 x 60"), OutOfRange);
}
