// Instants of a film: in order, without jumps, with words that fit.

#include "render/film/timeline.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

#include "sim/errors.h"
#include "tests/film/two_strokes.h"
#include "tests/picture/check_words.h"

using namespace overbend;
using namespace overbend::film;
using namespace overbend::picture;
using overbend::tests::TwoStrokes;

namespace {

int count(const FrameList& list, int stroke, Passage passage) {
    int n = 0;
    for (const Instant& m : list.instants) n += m.stroke == stroke && m.passage == passage ? 1 : 0;
    return n;
}

}  // namespace

TEST_CASE("a film lasts as long as was asked for") {
    const TwoStrokes two;
    FilmOptions options;
    const FrameList list = timeline(two.job, options);
    // Set up and load, two strokes, from one to the other without other tools, and the end.
    const double between = 1.8 + 1.1 + (6.0 - 1.8) + 0.9;
    CHECK(std::abs(static_cast<int>(list.instants.size()) - 30.0 * (8.0 + between + 8.0)) <= 8);
    CHECK(count(list, 0, Passage::turn) == 66);
    CHECK(count(list, 1, Passage::turn) == 0);
    CHECK(count(list, 0, Passage::change) == 54);  // once, at the beginning
    CHECK(count(list, 0, Passage::dwell) == 15);
    options.seconds_per_stroke = 4.0;
    options.frames_per_second = 10.0;
    CHECK(std::abs(static_cast<int>(timeline(two.job, options).instants.size()) - 10.0 * (8.0 + between)) <=
          8);
    options.cards = Cards::shown;
    CHECK(count(timeline(two.job, options), 0, Passage::title) == 40);
    CHECK(count(timeline(two.job, options), 0, Passage::finished) == 0);  // no part is given
}

TEST_CASE("the free strip is held for a second and a half when nothing moves any more") {
    const TwoStrokes two;
    const FrameList list = timeline(two.job, {});
    int still = 0;
    for (const Instant& m : list.instants)
        still +=
            m.stroke == 0 && m.passage == Passage::free && m.punch_travel == -list.looks[0].raised ? 1 : 0;
    CHECK(still >= 45);
}

TEST_CASE("the ram comes down much faster than it presses") {
    const TwoStrokes two;
    const FrameList list = timeline(two.job, {});
    double approach = 0.0, press = 0.0, last = 1e9;
    for (const Instant& m : list.instants) {
        if (m.stroke != 0 || !in_a_stroke(m.passage)) continue;
        const double travel = m.punch_travel.value_or(state_at(two.lip, m.at).travel);
        if (last < 1e8 && m.passage == Passage::approach) approach = std::max(approach, travel - last);
        if (last < 1e8 && m.passage == Passage::press) press = std::max(press, travel - last);
        last = travel;
    }
    CHECK(approach > 5.0 * press);
}

TEST_CASE("a stroke's moments run from the first state to the last, never back") {
    const TwoStrokes two;
    const FrameList list = timeline(two.job, {});
    double last = 0.0;
    bool loaded_seen = false;
    for (const Instant& m : list.instants) {
        if (m.stroke != 0 || !in_a_stroke(m.passage)) continue;
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
    for (const Instant& m : list.instants) {
        if (m.stroke != 0 || !in_a_stroke(m.passage)) continue;
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
    std::string turn, set_up, lay_in;
    for (const Instant& m : list.instants) {
        if (m.stroke == 0 && m.passage == Passage::free) free = m.caption;
        if (m.passage == Passage::turn) turn = m.caption;
        if (m.passage == Passage::change) set_up = m.caption;
        if (m.passage == Passage::lay_in) lay_in = m.caption;
    }
    CHECK(free == "Free: the bend opens from 92.8\u00b0 under load to 90.2\u00b0; springback 2.6\u00b0.");
    CHECK(turn == "Turn: the part is turned end for end.");
    CHECK(set_up == "Fit: the punch vee-60 and the die two-way.");
    CHECK(lay_in == "Load: place the strip on the die for root.");
    REQUIRE(list.looks[1].bends[0].free);
    CHECK(*list.looks[1].bends[0].free == doctest::Approx(1.2 - 0.045));
}

TEST_CASE("words can be read in every part of a film") {
    TwoStrokes two;
    clearance::Closest near;
    near.distance = 4.2, near.tool = 0;
    two.job.strokes[1].clearance.assign(two.root.states.size(), near);
    two.job.strokes[1].hits = {{{{6.0, 7.0}, 0.42, "flange and punch"}, 10, 20}};
    for (const PictureSize size : {PictureSize{1280, 720}, PictureSize{1920, 1080}}) {
        FilmOptions options;
        options.size = size;
        const FrameList list = timeline(two.job, options);
        for (int i = 0; i < static_cast<int>(list.instants.size()); i += 7) {
            CAPTURE(size.width);
            CAPTURE(i);
            tests::check_words(draw_frame(two.job, options, list, i));
        }
    }
}

TEST_CASE("a springback drawn larger has its true size again before the part is taken away") {
    const TwoStrokes two;
    FilmOptions options;
    options.springback_scale = 6.0;
    const FrameList list = timeline(two.job, options);
    for (std::size_t i = 0; i < list.instants.size(); ++i) {
        const Instant& m = list.instants[i];
        if (m.passage == Passage::retract) CHECK(m.springback_scale == 6.0);
        if (m.passage < Passage::retract || m.passage > Passage::free) CHECK(m.springback_scale == 1.0);
        if (m.passage == Passage::free && list.instants[i + 1].passage == Passage::away)
            CHECK(m.springback_scale == doctest::Approx(1.0));
    }
}

TEST_CASE("over strokes that are left out no part is carried: it is removed, and the next one loaded") {
    TwoStrokes two;
    two.job.strokes[0].number = 1;
    two.job.strokes[1].number = 3;
    two.job.stroke_count = 4;
    const FrameList list = timeline(two.job, {});
    CHECK(count(list, 0, Passage::turn) == 0);
    CHECK(count(list, 0, Passage::away) > 0);
    CHECK(count(list, 1, Passage::change) > 0);
    bool told = false;
    for (const Text& text :
         tests::words_of(draw_frame(two.job, {}, list, static_cast<int>(list.instants.size()) - 1)))
        told = told || text.words == "step 3 of 4";
    CHECK(told);
}

TEST_CASE("an interference is shown in its states only") {
    TwoStrokes two;
    two.job.strokes[0].hits = {{{{6.0, 7.0}, 0.42, "flange and punch"}, 10, 20}};
    const FrameList list = timeline(two.job, {});
    for (int i = 0; i < static_cast<int>(list.instants.size()); i += 5) {
        bool shown = false;
        for (const Text& text : tests::words_of(draw_frame(two.job, {}, list, i)))
            shown = shown || text.words == "interference 0.42 mm";
        const Instant& m = list.instants[i];
        CHECK(shown == (m.stroke == 0 && in_a_stroke(m.passage) && m.at >= 10.0 && m.at <= 20.0));
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
    tests::check_words(draw_frame(two.job, {}, list, static_cast<int>(list.instants.size()) - 1));
}

TEST_CASE("the springback of a bend that closes is told as such") {
    TwoStrokes two;
    two.job.strokes.resize(1);
    two.job.strokes[0].bends[0].loaded = 1.50;
    two.job.strokes[0].bends[0].free = 1.52;
    const FrameList list = timeline(two.job, {});
    std::string free;
    for (const Instant& m : list.instants)
        if (m.passage == Passage::free) free = m.caption;
    CHECK(free.find("closes") != std::string::npos);
    CHECK(free.find("springback \u22121.1\u00b0") != std::string::npos);
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
    ShownJob none;
    none.strip_width = 20.0;
    CHECK_THROWS_WITH_AS(timeline(none, {}), doctest::Contains("no strokes"), OutOfRange);
    options = {};
    options.springback_scale = 0.5;
    CHECK_THROWS_WITH_AS(timeline(two.job, options), doctest::Contains("springback"), OutOfRange);
    two.job.strokes[1].clearance.resize(1);
    CHECK_THROWS_WITH_AS(timeline(two.job, {}), doctest::Contains("1 clearances"), OutOfRange);
    two.job.strokes[1].clearance.clear();
    two.job.strokes[1].recording = nullptr;
    CHECK_THROWS_WITH_AS(timeline(two.job, {}), doctest::Contains("\"root\" has no recording"), OutOfRange);
    two.job.strokes[1].recording = &two.root;
    two.job.strip_width = 0.0;
    CHECK_THROWS_AS(timeline(two.job, {}), OutOfRange);
    two.job.strip_width = 20.0;
    const FrameList list = timeline(two.job, {});
    CHECK_THROWS_AS(draw_frame(two.job, {}, list, static_cast<int>(list.instants.size())), OutOfRange);
}

TEST_CASE("an interference is where it is in each of its states") {
    TwoStrokes two;
    ShownHit hit{{{6.0, 7.0}, 0.42, "flange and punch"}, 10, 12, {}};
    hit.in_states = {{{1.0, 7.0}, 0.10}, {{2.0, 7.0}, 0.20}, {{3.0, 7.0}, 0.30}};
    two.job.strokes[0].hits = {hit};
    const FrameList list = timeline(two.job, {});
    Instant instant;
    instant.stroke = 0;
    instant.passage = Passage::press;
    for (const auto& [at, depth] : {std::pair<double, const char*>(10.0, "interference 0.10 mm"),
                                    {10.8, "interference 0.20 mm"},
                                    {12.0, "interference 0.30 mm"}}) {
        instant.at = at;
        bool shown = false;
        for (const Text& text : tests::words_of(draw_instant(two.job, {}, list, instant)))
            shown = shown || text.words == depth;
        CHECK(shown);
    }
}

TEST_CASE("between two frames of a passage everything is between them") {
    const TwoStrokes two;
    const FrameList list = timeline(two.job, {});
    const auto first = [&](Passage passage) {
        for (std::size_t i = 0; i < list.instants.size(); ++i)
            if (list.instants[i].passage == passage && list.instants[i + 1].passage == passage)
                return static_cast<double>(i);
        return -1.0;
    };
    for (const Passage passage :
         {Passage::approach, Passage::press, Passage::retract, Passage::free, Passage::away, Passage::turn}) {
        const double i = first(passage);
        REQUIRE(i >= 0.0);
        const Instant& a = list.instants[static_cast<std::size_t>(i)];
        const Instant& b = list.instants[static_cast<std::size_t>(i) + 1];
        const Instant m = instant_at(list, i + 0.25);
        CHECK(m.at == doctest::Approx(0.75 * a.at + 0.25 * b.at));
        CHECK(m.part == doctest::Approx(0.75 * a.part + 0.25 * b.part));
        if (a.punch_travel)
            CHECK(*m.punch_travel == doctest::Approx(0.75 * *a.punch_travel + 0.25 * *b.punch_travel));
        CHECK(m.caption == a.caption);
    }
    // From one passage to the next nothing is blended, and outside there is nothing.
    double end = first(Passage::press);
    while (list.instants[static_cast<std::size_t>(end) + 1].passage == Passage::press) end += 1.0;
    CHECK(instant_at(list, end + 0.5).at == list.instants[static_cast<std::size_t>(end)].at);
    CHECK(instant_at(list, -3.0).part == list.instants.front().part);
    CHECK(instant_at(list, 1e9).at == list.instants.back().at);
}
