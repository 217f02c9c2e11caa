// The timeline of a job: played, moved by hand, looped, by buttons and by keys.

#include <doctest/doctest.h>

#include "tests/window/process_session.h"

using namespace overbend;
using tests::Session;
using window::Playing;
using K = sf::Keyboard;

TEST_CASE("a job comes up at its first stroke and stands still") {
    Session s("wrong-order");
    CHECK(s.at() == s.playback().strokes[0].first);
    CHECK(s.shown()->instant.passage == film::Passage::placed);
    const int before = s.window.frames();
    for (int i = 0; i < 50; ++i) s.window.turn(s.show);
    CHECK(s.window.frames() == before);
}

TEST_CASE("it plays by the clock, and stops where it was stopped") {
    Session s("wrong-order");
    for (int i = 0; i < 3; ++i) s.user.click("Faster");
    CHECK(s.show.process().head().speed == 10.0);
    for (int i = 0; i < 6; ++i) s.user.click("Slower");
    CHECK(s.show.process().head().speed == 0.1);
    for (int i = 0; i < 4; ++i) s.user.key(K::Equal);
    CHECK(s.show.process().head().speed == 2.0);
    s.user.key(K::Hyphen);
    CHECK(s.show.process().head().speed == 1.0);

    const double begin = s.at();
    s.user.key(K::Space);
    CHECK(s.show.process().head().playing == Playing::yes);
    const sf::Clock clock;
    const int frames = s.window.frames();
    while (clock.getElapsedTime().asSeconds() < 1.5f) s.window.turn(s.show);
    CHECK(s.window.frames() > frames + 3);  // a slow machine shows fewer
    CHECK(s.shown()->request.at > begin);
    s.user.click("Play");
    REQUIRE(s.user.wait());
    CHECK(s.show.process().head().playing == Playing::no);
    const double spent = clock.getElapsedTime().asSeconds();
    CHECK(s.at() > begin + 30.0);
    CHECK(s.at() < begin + 30.0 * spent + 1.0);
    CHECK(s.shown()->request.at == s.at());
}

TEST_CASE("frames and strokes, by buttons and keys") {
    Session s("wrong-order");
    const auto strokes = s.playback().strokes;
    s.click("Next stroke");
    CHECK(s.at() == strokes[1].first);
    CHECK(s.shown()->instant.stroke == 1);
    s.key(K::RBracket);
    CHECK(s.at() == strokes[2].first);
    s.click("Previous stroke");
    CHECK(s.at() == strokes[1].first);
    s.key(K::LBracket);
    CHECK(s.at() == strokes[0].first);
    s.click("Next frame");
    s.key(K::Period);
    CHECK(s.at() == strokes[0].first + 2);
    s.click("Previous frame");
    s.key(K::Comma);
    CHECK(s.at() == strokes[0].first);
}

TEST_CASE("the first interference") {
    Session s("wrong-order");
    s.click("First interference");
    CHECK(s.at() == s.playback().interferences.front().first);
    CHECK(s.shown()->instant.stroke == 1);
    // It is above what is seen at first, and brought into view.
    const picture::ShownHit& f = s.playback().shown.strokes[1].hits.front();
    REQUIRE_FALSE(f.in_states.empty());
    const picture::Point mark = s.shown()->view.on_picture(f.in_states.front().first);
    CHECK(picture::holds(s.shown()->view.stage, mark));
    s.key(K::LBracket);
    s.key(K::I);
    CHECK(s.at() == s.playback().interferences.front().first);
    s.keep("interference");
}

TEST_CASE("no interference, none to go to") {
    Session clear("one-bend-dc01");
    CHECK_FALSE(clear.user.find("First interference").enabled);
    const double before = clear.at();
    clear.key(K::I);
    CHECK(clear.at() == before);
}

TEST_CASE("the timeline is scrubbed, and the picture follows") {
    Session s("wrong-order");
    const auto stroke = s.playback().strokes[2];
    s.scrub_to(0.5 * (stroke.first + stroke.last));
    CHECK(s.at() == doctest::Approx(0.5 * (stroke.first + stroke.last)).epsilon(0.01));
    CHECK(s.shown()->instant.stroke == 2);
    const ui::Control bar = s.user.find("Timeline");
    s.user.drag(bar.box.centre(), {bar.box.x - 50.0, bar.box.centre().y()});
    REQUIRE(s.user.wait());
    CHECK(s.at() == 0.0);
    s.user.drag(bar.box.centre(), {bar.box.right() + 50.0, bar.box.centre().y()});
    REQUIRE(s.user.wait());
    CHECK(s.at() == s.playback().last());
    s.user.point_at(bar.box.centre());  // tells what is there
    s.keep("timeline");
}

TEST_CASE("a looped stroke does not end") {
    Session s("one-bend-dc01");
    const auto stroke = s.playback().strokes[0];
    s.click("Loop");
    s.scrub_to(stroke.last - 3.0);
    s.user.key(K::Space);
    const sf::Clock clock;
    while (clock.getElapsedTime().asSeconds() < 0.6f) s.window.turn(s.show);
    s.user.key(K::Space);
    REQUIRE(s.user.wait());
    CHECK(s.at() >= stroke.first);
    CHECK(s.at() < stroke.last - 3.0);
    s.key(K::L);
    CHECK(s.show.process().head().looping == window::Looping::no);
}

TEST_CASE("the film's end stops it, and play starts again") {
    Session s("one-bend-dc01");
    s.scrub_to(s.playback().last() - 2.0);
    s.user.key(K::Space);
    REQUIRE(s.user.wait(10.0));
    CHECK(s.at() == s.playback().last());
    CHECK(s.show.process().head().playing == Playing::no);
    s.user.key(K::Space);
    s.user.key(K::Space);
    REQUIRE(s.user.wait());
    CHECK(s.at() < 60.0);
}

TEST_CASE("Space belongs to a control that is framed") {
    Session s("one-bend-dc01");
    while (s.window.ui().framed() != "Loop") s.key(K::Tab);
    s.key(K::Space);
    CHECK(s.show.process().head().playing == Playing::no);
    CHECK(s.show.process().head().looping == window::Looping::yes);
}
