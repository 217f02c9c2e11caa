// A stage looked at from nearer or from aside, and where on the strip a place of the press is.

#include <doctest/doctest.h>

#include <algorithm>

#include "render/picture/stage.h"
#include "render/picture/strip_hit.h"
#include "render/picture/swept.h"
#include "tests/picture/check_words.h"
#include "tests/picture/synthetic_recording.h"

using namespace overbend;
using namespace overbend::picture;
using overbend::tests::synthetic_recording;

namespace {

constexpr PictureSize size{1280, 720};

StageInfo info() {
    StageInfo i;
    i.step_name = "lip";
    i.strip_width = 20.0;
    i.caption = "Press: the punch presses the strip into the die.";
    i.bends = {{"lip", 18.0, 0.0, {}, {}}};
    i.lens = Lens::shown;
    return i;
}

ViewOptions options() {
    ViewOptions o;
    o.lens = Lens::shown;
    o.bend_lines = {18.0};
    return o;
}

}  // namespace

TEST_CASE("from nearer and from aside, names and magnifier keep to the picture's rules") {
    const stroke::Recording r = synthetic_recording();
    const View fitted = choose_view(r, size, info());
    for (const Zoom& zoom : {Zoom{}, Zoom{1.3, {0.0, 0.0}}, Zoom{3.0, {2.0, 1.0}}, Zoom{8.0, {0.0, 2.0}},
                             Zoom{0.4, {-5.0, 3.0}}}) {
        CAPTURE(zoom.times);
        const View near = zoomed(r, fitted, zoom, size, options(), Names::placed_anew);
        CHECK(near.scale == doctest::Approx(zoom.times * fitted.scale));
        CHECK((near.centre - fitted.centre - zoom.shift).norm() < 1e-12);
        const Swept swept = swept_by_stroke(r, near);
        for (const ToolLabel& label : near.labels) {
            CHECK(holds(near.stage, label.box));
            CHECK_FALSE(crossed(swept, label.box, 0.0));
            if (near.lens) CHECK_FALSE(overlap(label.box, near.lens->box));
        }
        if (near.lens) CHECK(holds(near.stage, near.lens->box));
        for (const double instant : {0.0, 12.0, 25.0, 28.0}) {
            CAPTURE(instant);
            tests::check_words(draw_stage(r, instant, info(), size, near));
        }
    }
    const View same = zoomed(r, fitted, {}, size, options(), Names::placed_anew);
    REQUIRE(same.labels.size() == fitted.labels.size());
    for (std::size_t i = 0; i < same.labels.size(); ++i)
        CHECK(same.labels[i].box.x == fitted.labels[i].box.x);
}

TEST_CASE("carried along, a name goes with what it lies on, or is left out") {
    const stroke::Recording r = synthetic_recording();
    const View fitted = choose_view(r, size, info());
    REQUIRE(fitted.labels.size() >= 2);
    // A hundredth of the stage aside: all of them are still there, shifted as the tools are.
    const Place little(0.01 * fitted.width_mm(), 0.0);
    const View moved = zoomed(r, fitted, {1.0, little}, size, options(), Names::carried_along);
    REQUIRE_FALSE(moved.labels.empty());
    for (const ToolLabel& label : moved.labels) {
        const auto before = std::find_if(fitted.labels.begin(), fitted.labels.end(),
                                         [&](const ToolLabel& l) { return l.tool == label.tool; });
        REQUIRE(before != fitted.labels.end());
        CHECK(label.box.x == doctest::Approx(before->box.x - 0.01 * fitted.stage.width));
        CHECK(label.box.y == doctest::Approx(before->box.y));
    }
    for (const double times : {0.2, 1.5, 4.0, 20.0})
        for (const ToolLabel& label :
             zoomed(r, fitted, {times, little}, size, options(), Names::carried_along).labels)
            CHECK(holds(fitted.stage, label.box));
    const Place far(5.0 * fitted.width_mm(), 0.0);
    CHECK(zoomed(r, fitted, {1.0, far}, size, options(), Names::carried_along).labels.empty());
}

TEST_CASE("an interference beyond what is seen stands at the stage's edge and says so") {
    const stroke::Recording r = synthetic_recording();
    StageInfo there = info();
    const View view = choose_view(r, size, there);  // without them: a view that knows of them holds them
    const auto says = [&](const std::string& words) {
        const std::vector<Text> all = tests::words_of(draw_stage(r, 20.0, there, size, view));
        return std::any_of(all.begin(), all.end(), [&](const Text& t) { return t.words == words; });
    };
    there.interferences = {{{6.0, 7.0}, 0.42, "flange and punch"}};
    CHECK(says("interference 0.42 mm"));
    CHECK_FALSE(says("outside the picture"));
    there.interferences = {{{6.0, 700.0}, 0.42, "flange and punch"}};
    CHECK(says("interference 0.42 mm"));
    CHECK(says("outside the picture"));
    tests::check_words(draw_stage(r, 20.0, there, size, view));
}

TEST_CASE("a place on the strip is found again, with its layer") {
    const stroke::Recording r = synthetic_recording();
    for (const double instant : {0.0, 14.3, 25.0}) {
        const stroke::State s = state_at(r, instant);
        for (const double at : {0.6, 9.0, 17.9, 18.4, 26.0, 41.0}) {
            const Station cut = station_at(r, s, at);
            for (int k = 0; k < r.layers(); ++k) {
                CAPTURE(instant);
                CAPTURE(at);
                CAPTURE(k);
                const double height = 0.5 * (cut.edge[k] + cut.edge[k + 1]);
                const StripHit hit = nearest_on_strip(r, s, cut.at(height));
                CHECK(hit.outside == 0.0);
                CHECK(std::abs(hit.blank_position - at) < 0.06);
                CHECK(std::abs(hit.height - height) < 0.02);
                CHECK(std::abs(hit.layer - k) <= 1);
            }
            CHECK(nearest_on_strip(r, s, cut.at(cut.edge.back() + 0.5)).outside ==
                  doctest::Approx(0.5).epsilon(0.1));
            CHECK(nearest_on_strip(r, s, cut.at(cut.edge.back() + 0.5)).layer == r.layers() - 1);
        }
        // Beyond its end
        const Station end = station_at(r, s, 0.0);
        const Place beyond = end.middle - 2.0 * Place(std::cos(end.theta), std::sin(end.theta));
        CHECK(nearest_on_strip(r, s, beyond).outside == doctest::Approx(2.0));
        CHECK(nearest_on_strip(r, s, beyond).blank_position == 0.0);
    }
}
