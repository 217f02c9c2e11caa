// Jobs that run beside the window: cancelled, run again, replaced by another file, refused.

#include <doctest/doctest.h>

#include "tests/files/own_folder.h"
#include "tests/window/process_session.h"

using namespace overbend;
using tests::Session;
using K = sf::Keyboard;

TEST_CASE("a run is cancelled and done again, and the picture stays meanwhile") {
    Session s("wrong-order");
    const window::SharedJob first = s.show.process().job();
    s.user.key(K::R);
    CHECK(s.user.has("Cancel"));
    CHECK(s.user.has("Picture"));
    s.user.key(K::R);
    REQUIRE(s.user.wait());
    CHECK(s.user.has("Run"));
    CHECK(s.show.process().job() == first);  // nothing newer has come
    s.keep("cancelled");
    const double before = s.at();
    s.click("Next stroke");
    CHECK(s.at() > before);  // and it still answers
    s.click("Run");
    CHECK(s.show.process().job() != first);
    CHECK(s.at() == s.playback().strokes[1].first);  // it has kept its place
}

TEST_CASE("another file is opened, a bad one is refused, and what was there stays") {
    const tests::OwnFolder folder;
    Session s("wrong-order");
    s.key(K::RBracket);
    const double before = s.at();
    const std::string text = tests::bytes_of("cases/one-bend-dc01/case.toml");
    s.show.dropped({folder.write("bad.toml", tests::replaced(text, "format = 1", "format = 7"))});
    REQUIRE(s.user.wait());
    s.user.frames(2);
    s.keep("refused");
    CHECK(s.playback().strokes.size() == 3);
    CHECK(s.at() == before);
    s.show.dropped({"cases/one-bend-dc01/case.toml"});
    REQUIRE(s.user.wait());
    CHECK(s.playback().strokes.size() == 1);
    CHECK(s.at() == s.playback().strokes[0].first);  // a film of its own begins at its beginning
    CHECK(std::filesystem::path(s.show.remembered().last_case).filename() == "case.toml");
}

TEST_CASE("a window that is closed while a job runs waits for nothing") {
    const sf::Clock clock;
    {
        window::MainShow show({}, std::filesystem::path("cases/cable-hook/case.toml"));
        ui::Window window({});
        for (int i = 0; i < 3; ++i) window.turn(show);
    }
    CHECK(clock.getElapsedTime().asSeconds() < 20.0f);
}
