// Moments of a film: in order, without jumps, with words that fit.

#include "render/film/timeline.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

#include "sim/errors.h"
#include "tests/film/two_strokes.h"
#include "tests/picture/check_words.h"

using namespace overbend;
using namespace overbend::render;
using overbend::tests::TwoStrokes;

namespace {

int count(const FrameList& list, int stroke, Passage passage) {
    int n = 0;
    for (const Moment& m : list.moments) n += m.stroke == stroke && m.passage == passage ? 1 : 0;
    return n;
}

}  // namespace

TEST_CASE("a film lasts as long as was asked for") {
    const TwoStrokes two;
    FilmOptions options;
    const FrameList list = timeline(two.job, options);
    CHECK(std::abs(static_cast<int>(list.moments.size()) - 30 * (8 + 2 + 8)) <= 4);
    CHECK(count(list, 0, Passage::carry) == 60);
    CHECK(count(list, 1, Passage::carry) == 0);
    CHECK(count(list, 0, Passage::dwell) == 15);
    CHECK(count(list, 0, Passage::free) >= 45);  // a second and a half at least
    options.seconds_per_stroke = 4.0;
    options.frames_per_second = 10.0;
    CHECK(std::abs(static_cast<int>(timeline(two.job, options).moments.size()) - 10 * (4 + 2 + 4)) <= 4);
}

TEST_CASE("a stroke's moments run from the first state to the last, never back") {
    const TwoStrokes two;
    const FrameList list = timeline(two.job, {});
    double last = 0.0;
    bool loaded_seen = false;
    for (const Moment& m : list.moments) {
        if (m.stroke != 0 || m.passage == Passage::carry) continue;
        CHECK(m.at >= last);
        if (m.passage == Passage::press) CHECK(m.at - last < 2.0);
        last = m.at;
        loaded_seen = loaded_seen || m.at == list.looks[0].loaded_at;
    }
    CHECK(last == static_cast<double>(two.lip.states.size()) - 1.0);
    CHECK(loaded_seen);
}

TEST_CASE("the punch comes down, and goes up again, without a jump") {
    const TwoStrokes two;
    const FrameList list = timeline(two.job, {});
    double last = -list.looks[0].raised;
    for (const Moment& m : list.moments) {
        if (m.stroke != 0 || m.passage == Passage::carry) continue;
        const double travel = m.punch_travel.value_or(state_at(two.lip, m.at).travel);
        CHECK(std::abs(travel - last) < 0.1 * list.looks[0].raised);
        last = travel;
    }
    CHECK(last == doctest::Approx(-list.looks[0].raised));
}

TEST_CASE("captions tell the angles under load and free") {
    const TwoStrokes two;
    const FrameList list = timeline(two.job, {});
    std::string free;
    std::string carry;
    for (const Moment& m : list.moments) {
        if (m.stroke == 0 && m.passage == Passage::free) free = m.caption;
        if (m.passage == Passage::carry) carry = m.caption;
    }
    CHECK(free == "Free: the bend opens from 92.8\u00b0 under load to 90.2\u00b0; springback 2.6\u00b0.");
    CHECK(carry == "Next: turn the strip end for end and lay it in for the next stroke.");
    REQUIRE(list.looks[1].bends[0].free);
    CHECK(*list.looks[1].bends[0].free == doctest::Approx(1.2 - 0.045));
}

TEST_CASE("words can be read in every part of a film") {
    TwoStrokes two;
    two.job.strokes[1].clearance.assign(two.root.states.size(), 4.2);
    two.job.strokes[1].interferences = {{{{6.0, 7.0}, 0.42, "flange and punch"}, 10, 20}};
    for (const PictureSize size : {PictureSize{1280, 720}, PictureSize{1920, 1080}}) {
        FilmOptions options;
        options.size = size;
        const FrameList list = timeline(two.job, options);
        for (int i = 0; i < static_cast<int>(list.moments.size()); i += 7) {
            CAPTURE(size.width);
            CAPTURE(i);
            tests::check_words(draw_frame(two.job, options, list, i));
        }
    }
}

TEST_CASE("an interference is shown in its states only") {
    TwoStrokes two;
    two.job.strokes[0].interferences = {{{{6.0, 7.0}, 0.42, "flange and punch"}, 10, 20}};
    const FrameList list = timeline(two.job, {});
    for (int i = 0; i < static_cast<int>(list.moments.size()); i += 5) {
        bool shown = false;
        for (const Text& text : tests::words_of(draw_frame(two.job, {}, list, i)))
            shown = shown || text.words == "interference 0.42 mm";
        const Moment& m = list.moments[i];
        CHECK(shown == (m.stroke == 0 && m.passage != Passage::carry && m.at >= 10.0 && m.at <= 20.0));
    }
}

TEST_CASE("a stroke that was not solved to its end is shown as far as it came") {
    TwoStrokes two;
    two.lip.states.resize(15);
    two.job.strokes.resize(1);
    const FrameList list = timeline(two.job, {});
    CHECK(count(list, 0, Passage::press) > 0);
    CHECK(count(list, 0, Passage::retract) == 0);
    CHECK_FALSE(list.looks[0].bends[0].free);
    tests::check_words(draw_frame(two.job, {}, list, static_cast<int>(list.moments.size()) - 1));
}

TEST_CASE("the springback of a bend that closes is told as such") {
    TwoStrokes two;
    two.job.strokes.resize(1);
    two.job.strokes[0].bends[0].loaded = 1.50;
    two.job.strokes[0].bends[0].free = 1.52;
    const FrameList list = timeline(two.job, {});
    CHECK(list.moments.back().caption.find("closes") != std::string::npos);
    CHECK(list.moments.back().caption.find("springback \u22121.1\u00b0") != std::string::npos);
}

TEST_CASE("a film that cannot be is an error with a name") {
    TwoStrokes two;
    FilmOptions options;
    options.size = {0, 0};
    CHECK_THROWS_WITH_AS(timeline(two.job, options), doctest::Contains("picture size"), OutOfRange);
    options = {};
    options.frames_per_second = 0.0;
    CHECK_THROWS_WITH_AS(timeline(two.job, options), doctest::Contains("frames per second"), OutOfRange);
    options.frames_per_second = std::numeric_limits<double>::quiet_NaN();
    CHECK_THROWS_AS(timeline(two.job, options), OutOfRange);
    options = {};
    options.seconds_per_stroke = 1e6;
    CHECK_THROWS_AS(timeline(two.job, options), OutOfRange);
    CHECK_THROWS_AS(timeline(FilmJob{"", 20.0, {}}, {}), OutOfRange);
    two.job.strokes[1].clearance = {1.0};
    CHECK_THROWS_WITH_AS(timeline(two.job, {}), doctest::Contains("1 clearances"), OutOfRange);
    two.job.strokes[1].clearance.clear();
    two.job.strokes[1].recording = nullptr;
    CHECK_THROWS_WITH_AS(timeline(two.job, {}), doctest::Contains("\"root\" has no recording"), OutOfRange);
    two.job.strokes[1].recording = &two.root;
    two.job.strip_width = 0.0;
    CHECK_THROWS_AS(timeline(two.job, {}), OutOfRange);
    two.job.strip_width = 20.0;
    const FrameList list = timeline(two.job, {});
    CHECK_THROWS_AS(draw_frame(two.job, {}, list, static_cast<int>(list.moments.size())), OutOfRange);
}
