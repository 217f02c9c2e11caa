// The storyboard: every stroke with its three panels, words of a size that can be read, on as many pages as
// it takes.

#include "render/report/storyboard.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "render/chart/force_travel.h"
#include "render/chart/moment_curvature.h"
#include "render/chart/stress_through_thickness.h"
#include "render/picture/panel.h"
#include "render/picture/swept.h"
#include "render/picture/tool_labels.h"
#include "render/report/paper.h"
#include "render/report/turn_sign.h"
#include "scenes/documents/report/shown_job.h"
#include "scenes/files/case/read_case.h"
#include "sim/errors.h"
#include "tests/chart/legible.h"
#include "tests/picture/synthetic_recording.h"

using namespace overbend;
using namespace overbend::chart;
using namespace overbend::picture;
using namespace overbend::report;
using overbend::tests::check_legible;
using overbend::tests::says;

namespace {

// So many strokes of one and the same recording.
ShownJob job_of(int strokes) {
    static const stroke::Recording recording = tests::synthetic_recording();
    ShownJob job;
    job.title = "Bracket with a name of its own";
    job.material = "Stainless steel 1.4301 (X5CrNi18-10), annealed";
    job.thickness = 1.0;
    for (int i = 0; i < strokes; ++i) {
        ShownStroke stroke;
        stroke.name = "bend number " + std::to_string(i + 1);
        stroke.tools = {{"punch", "slim wedge", ""}, {"die", "two-way block", ", face 2 up"}};
        stroke.recording = &recording;
        stroke.turning = static_cast<Turning>(i % 4);
        stroke.bends = {{"a", 20.0, 0.0, 1.62, 1.575}};
        if (i % 3 == 2) stroke.bends.push_back({"b", 24.0, 0.0, -1.62, -1.575});
        if (i % 5 == 1) stroke.hits = {{{{2.0, 6.0}, 1.25, "flange and punch"}, 10, 27}};
        job.strokes.push_back(stroke);
    }
    return job;
}

int panels_on(const DrawingList& list, const ThemeColours& colours) {
    int count = 0;
    for (const Item& item : list.items) {
        const Shape* s = std::get_if<Shape>(&item);
        if (s && s->fill && !s->stroke && s->fill->red == colours.stage.red &&
            s->fill->blue == colours.stage.blue && s->path.size() == 5)
            ++count;
    }
    return count;
}

}  // namespace

TEST_CASE("every stroke has three panels, and words can be read, for 1 to 20 strokes in both themes") {
    for (const int strokes : {1, 2, 3, 4, 6, 7, 9, 12, 16, 18, 20})
        for (const Theme theme : {Theme::light, Theme::dark}) {
            CAPTURE(strokes);
            const ShownJob board = job_of(strokes);
            for (const bool paper : {false, true}) {
                CAPTURE(paper);
                const std::vector<DrawingList> pages =
                    paper ? draw_story_pages(board, theme) : draw_slides(board, 1080, theme);
                int panels = 0;
                for (const DrawingList& page : pages) {
                    CHECK(page.width == (paper ? paper_width : 1920));
                    CHECK(page.height == (paper ? paper_height : 1080));
                    check_legible(page, page.height / 60.0, 8);
                    panels += panels_on(page, theme_colours(theme));
                }
                CHECK(panels == 3 * strokes);
                const int most = paper ? 6 : 18;
                CHECK(static_cast<int>(pages.size()) == (strokes + most - 1) / most);
                for (int i = 1; i <= strokes; ++i) {
                    const auto named = [&](const DrawingList& p) {
                        const std::vector<std::string> words = tests::words_on(p);
                        return std::find(words.begin(), words.end(), std::to_string(i)) != words.end();
                    };
                    CHECK(std::count_if(pages.begin(), pages.end(), named) == 1);
                }
            }
        }
}

TEST_CASE("the demo on one slide: names, angles, how the strip is turned") {
    const files::Case c = files::read_case("cases/cable-hook/case.toml");
    const job::JobResult job = job::run_process(c, {});
    const ShownJob board = documents::shown_job(c, job);
    REQUIRE(board.strokes.size() == 6);
    CHECK(board.strokes[2].turning == Turning::over);
    CHECK(board.strokes[3].turning == Turning::none);
    CHECK(board.strokes[5].turning == Turning::over);
    const std::vector<DrawingList> slides = draw_slides(board, 1080, Theme::light);
    REQUIRE(slides.size() == 1);
    check_legible(slides[0], 18.0, 30);
    for (const job::StepResult& step : job.steps) CHECK(says(slides[0], step.name));
    CHECK(says(slides[0], "pressed 113."));
    CHECK(says(slides[0], "free 110.0\u00b0"));
    CHECK(says(slides[0], "free 45.0\u00b0, 45.0\u00b0"));
    CHECK(says(slides[0], "roll over"));
    CHECK_FALSE(says(slides[0], "hits a tool"));
    // and its charts can be drawn for each stroke
    for (int i = 0; i < 6; ++i) {
        const ForceTravel force = force_travel(board, board.strokes[i]);
        REQUIRE(force.limits.size() == 2);
        CHECK(force.limits[0].force == 60.0);
        CHECK(force.limits[1].force == doctest::Approx(500.0 * 0.02));  // its holders, on 20 mm of strip
        CHECK(force.loading.back().force ==
              doctest::Approx(job.steps[i].stroke.stop_force * c.width / 1000.0).epsilon(1e-6));
        check_legible(draw_force_travel(force, {}, Theme::light), 640 / 45.0, 12);
        const MomentCurvature moment = moment_curvature(board.strokes[i]);
        CHECK(moment.bends.size() == c.steps[i].bends.size());
        check_legible(draw_moment_curvature(moment, {}, Theme::dark), 640 / 45.0, 12);
        for (const BendMark& bend : board.strokes[i].bends)
            check_legible(draw_stress_through_thickness(stress_through_thickness(board.strokes[i], bend), {},
                                                        Theme::light),
                          640 / 45.0, 12);
    }
}

TEST_CASE("a stroke that hits something says so, and marks the place in the panels it is there in") {
    const files::Case c = files::read_case("cases/wrong-order/case.toml");
    const job::JobResult job = job::run_process(c, {});
    const ShownJob board = documents::shown_job(c, job);
    REQUIRE(board.strokes.size() == 3);
    CHECK(board.strokes[0].hits.empty());
    REQUIRE_FALSE(board.strokes[1].hits.empty());
    CHECK(board.strokes[1].hits[0].deepest.depth > 1.0);
    const DrawingList slide = draw_slides(board, 1080, Theme::light)[0];
    CHECK(says(slide, "hits a tool"));
    CHECK(says(slide, "interference"));
    check_legible(slide, 18.0, 15);
}

TEST_CASE("panels of a stroke are to one scale, and hold the whole strip at their instants") {
    const stroke::Recording r = tests::synthetic_recording();
    const double loaded = stroke::loaded_state(r);
    CHECK(r.states[static_cast<std::size_t>(loaded)].phase == stroke::Phase::held);
    const Rect box{10.0, 20.0, 400.0, 300.0};
    const View view = choose_panel_view(r, {0.0, loaded}, box, 12.0);
    for (const double instant : {0.0, loaded}) {
        const stroke::State s = state_at(r, instant);
        for (std::size_t i = 0; i < s.x.size(); ++i) {
            const Point p = view.on_picture({s.x[i], s.y[i]});
            CHECK(holds(box, p));
        }
    }
    const View moved = moved_view(view, {500.0, 20.0, 400.0, 300.0});
    CHECK(moved.scale == view.scale);
    CHECK((moved.on_picture({1.0, 2.0}) - view.on_picture({1.0, 2.0})).x() == doctest::Approx(490.0));
    CHECK_THROWS_AS(choose_panel_view(r, {}, box, 12.0), OutOfRange);
    CHECK_THROWS_AS(choose_panel_view(r, {1e6}, box, 12.0), OutOfRange);
}

// A line crosses where the strip comes between a name and its tool, not where it lies on the tool.
TEST_CASE("names in panels keep clear of the strip as it is seen, and so do the lines that lead from them") {
    const job::JobResult job = job::run_process(files::read_case("cases/cable-hook/case.toml"), {});
    constexpr double u = 12.0;
    Layout layout;
    layout.unit = u, layout.stage = {0.0, 0.0, 300.0, 245.0}, layout.narrow = true;
    int names = 0;
    for (const job::StepResult& step : job.steps) {
        const stroke::Recording& r = step.stroke.recording;
        const double loaded = stroke::loaded_state(r);
        const View view = choose_panel_view(r, {0.0, loaded}, layout.stage, u);
        std::vector<int> pressing;
        for (int t = 0; t < static_cast<int>(r.tools.size()); ++t)
            if (tool::presses(r.tools[t].role)) pressing.push_back(t);
        for (const double instant : {0.0, loaded}) {
            CAPTURE(step.name);
            CAPTURE(instant);
            const stroke::State s = state_at(r, instant);
            const double travel = instant == 0.0 ? -panel_raise(r, view) : s.travel;
            const Swept strip = swept_in(s, r.thickness, view);
            const std::vector<ToolLabel> labels = place_labels(r, view, layout, {s, travel, pressing});
            CHECK(labels.size() == pressing.size());
            for (const ToolLabel& label : labels) {
                CAPTURE(label.words);
                ++names;
                CHECK(holds(layout.stage, label.box));
                CHECK_FALSE(crossed(strip, label.box, 0.3 * u));
                const bool sprung = label.tool < static_cast<int>(s.compression.size());
                const std::vector<Point> outline =
                    tool_points(r.tools[label.tool],
                                stroke::tool_position(r.tools[label.tool], travel,
                                                      sprung ? s.compression[label.tool] : 0.0, s.phase),
                                view);
                const Point from = label.box.centre(), to = nearest_on(outline, from);
                bool lies_on_it = false;
                for (double x = label.box.x; x <= label.box.right(); x += 1.0)
                    lies_on_it = lies_on_it || inside(outline, {x, from.y()});
                CHECK(lies_on_it == label.inside);
                const double length = (to - from).norm(), end = length - 2.0 * strip.half - 14.0;
                for (double at = 0.0; at < end && !label.inside; at += 2.0) {
                    const Point p = from + at / length * (to - from);
                    CHECK_FALSE(crossed(strip, {p.x(), p.y(), 0.0, 0.0}, 0.5));
                }
            }
        }
    }
    CHECK(names > 20);
}

TEST_CASE("storyboards that cannot be are refused by name") {
    ShownJob board = job_of(2);
    CHECK_THROWS_AS(draw_slides(board, 100, Theme::light), OutOfRange);
    board.strokes[1].recording = nullptr;
    CHECK_THROWS_WITH_AS(draw_slides(board, 1080, Theme::light), doctest::Contains("bend number 2"),
                         OutOfRange);
    board.strokes.clear();
    CHECK_THROWS_AS(draw_story_pages(board, Theme::light), OutOfRange);
}
