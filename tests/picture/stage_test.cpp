// The stage: the same list every time; words large enough, apart from one another and inside the picture.

#include "render/picture/stage.h"

#include <doctest/doctest.h>

#include <set>

#include "render/picture/text_width.h"
#include "sim/errors.h"
#include "tests/picture/check_words.h"
#include "tests/picture/synthetic_recording.h"

using namespace overbend;
using namespace overbend::picture;
using overbend::tests::check_words;
using overbend::tests::synthetic_recording;
using overbend::tests::words_of;

namespace {

constexpr double held_instant = 25.0;
constexpr double free_instant = 28.0;

StageInfo plain_info() {
    StageInfo info;
    info.job_title = "Under-desk cable hook";
    info.step_name = "lip";
    info.step_number = 2;
    info.step_count = 5;
    info.caption = "Press: the punch presses the strip into the die.";
    info.strip_width = 20.0;
    info.bends = {{"lip", 18.0, 0.0, {}, {}}};
    return info;
}

// Everything at once, with long words.
StageInfo full_info() {
    StageInfo info = plain_info();
    info.job_title = "Under-desk cable hook with a long title that no picture has room for";
    info.step_name = "the lip at the left-hand end, bent after the root";
    info.caption =
        "Free: the bend angle opens from 92.8\u00b0 under load to 90.2\u00b0; springback 2.6\u00b0; and more "
        "words than two lines of any picture can hold, so that they must be cut somewhere in the end.";
    info.bends = {{"lip", 18.0, 6.0, 1.62, 1.575}, {"outer root", 28.0, 2.0, 0.1, 0.05}};
    info.interferences = {{{6.0, 7.0}, 0.42, "flange and punch"}, {{-5.0, 6.0}, 0.13, "flange and holder"}};
    info.least_clearance = 12.34;
    info.ghost = held_instant;
    return info;
}

}  // namespace

TEST_CASE("the same instant gives the same list") {
    const stroke::Recording r = synthetic_recording();
    const std::string once = as_text(draw_stage(r, 16.4, plain_info(), {1280, 720}));
    CHECK(once == as_text(draw_stage(r, 16.4, plain_info(), {1280, 720})));
    CHECK(once != as_text(draw_stage(r, 16.5, plain_info(), {1280, 720})));
}

TEST_CASE("words are large enough, apart, and inside the picture") {
    const stroke::Recording r = synthetic_recording();
    for (const PictureSize size : {PictureSize{1280, 720}, PictureSize{1920, 1080}, PictureSize{1024, 768},
                                   PictureSize{1080, 1080}, PictureSize{1080, 1920}, PictureSize{320, 180}})
        for (const StageInfo& given : {plain_info(), full_info()})
            for (const double instant : {0.0, 3.7, 16.4, held_instant, 26.5, free_instant}) {
                StageInfo info = given;
                info.colouring = instant > 20.0 ? Colouring::plastic_strain : Colouring::hoop_stress;
                CAPTURE(size.width);
                CAPTURE(size.height);
                CAPTURE(instant);
                check_words(draw_stage(r, instant, info, size));
            }
}

TEST_CASE("the picture says force, travel and angle with their units") {
    const stroke::Recording r = synthetic_recording();
    const DrawingList list = draw_stage(r, held_instant, plain_info(), {1280, 720});
    std::set<std::string> words;
    for (const Text& text : words_of(list)) words.insert(text.words);
    CHECK(words.count("1.42 kN"));  // 71 N/mm on 20 mm
    CHECK(words.count("71.0 kN/m"));
    CHECK(words.count("92.8\u00b0"));
    CHECK(words.count(fixed(r.states[25].travel, 2) + " mm"));
    CHECK(words.count("step 2 of 5"));
}

TEST_CASE("an instant, size or count that cannot be is an error with a name") {
    const stroke::Recording r = synthetic_recording();
    CHECK_THROWS_WITH_AS(draw_stage(r, 0.0, plain_info(), {0, 720}), doctest::Contains("0 x 720 px"),
                         OutOfRange);
    CHECK_THROWS_AS(draw_stage(r, 0.0, plain_info(), {5000, 720}), OutOfRange);
    CHECK_THROWS_AS(draw_stage(r, 0.0, plain_info(), {320, 2160}), OutOfRange);
    CHECK_THROWS_WITH_AS(draw_stage(r, 29.0, plain_info(), {1280, 720}), doctest::Contains("instant"),
                         OutOfRange);
    CHECK_THROWS_AS(draw_stage(r, -0.1, plain_info(), {1280, 720}), OutOfRange);
    CHECK_THROWS_AS(draw_stage(stroke::Recording{}, 0.0, plain_info(), {1280, 720}), OutOfRange);
    StageInfo info = plain_info();
    info.strip_width = 0.0;
    CHECK_THROWS_WITH_AS(draw_stage(r, 0.0, info, {1280, 720}), doctest::Contains("strip width"), OutOfRange);
    info = plain_info();
    info.step_number = 6;
    CHECK_THROWS_AS(draw_stage(r, 0.0, info, {1280, 720}), OutOfRange);
}

TEST_CASE("scales are rounded up to numbers that are easily read") {
    CHECK(rounded_up(563.0) == doctest::Approx(600.0));
    CHECK(rounded_up(600.0) == doctest::Approx(600.0));
    CHECK(rounded_up(0.0023) == doctest::Approx(0.0025));
    CHECK(rounded_up(9.1) == doctest::Approx(10.0));
    CHECK(rounded_up(0.0) == 1.0);
    CHECK(rounded_down(563.0) == doctest::Approx(500.0));
    CHECK(rounded_down(0.0041) == doctest::Approx(0.002));
    CHECK(rounded_down(1.9) == doctest::Approx(1.0));
}

TEST_CASE("a recording without tools, bends or forces can be drawn") {
    stroke::Recording r = synthetic_recording();
    r.tools.clear();
    for (stroke::State& s : r.states) s.contacts.clear();
    StageInfo info = plain_info();
    info.bends.clear();
    check_words(draw_stage(r, 12.0, info, {1280, 720}));
}
