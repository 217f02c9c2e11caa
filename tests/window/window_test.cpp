// The window itself, on a display without a screen: frames when something changes and none otherwise, its
// row of scenes, theme and keys.

#include "render/ui/window.h"

#include <doctest/doctest.h>

#include "scenes/window/main_show.h"
#include "tests/window/script.h"

using namespace overbend;

TEST_CASE("nothing is painted while nothing moves") {
    window::MainShow show({}, {});
    ui::Window window({});
    tests::Script user(window, show);
    REQUIRE(user.wait());
    const int before = window.frames();
    for (int i = 0; i < 50; ++i) window.turn(show);
    CHECK(window.frames() == before);
}

TEST_CASE("the row above the scenes, by mouse and by keys") {
    window::MainShow show({}, {});
    ui::Window window({});
    tests::Script user(window, show);
    user.click("Bench");
    CHECK(show.remembered().scene == window::SceneKind::bench);
    user.key(sf::Keyboard::F2);
    CHECK(show.remembered().scene == window::SceneKind::process);
    const int before = user.screenshot().bgra[0];
    user.click("Dark");
    user.frames(3);
    CHECK(show.theme() == picture::Theme::dark);
    CHECK(user.screenshot().bgra[0] < before);
    user.key(sf::Keyboard::F4);
    CHECK(show.theme() == picture::Theme::light);
    user.key(sf::Keyboard::F1);
    CHECK(user.has("Close the list of keys"));
    user.key(sf::Keyboard::Escape);
    user.frames(2);
    CHECK_FALSE(user.has("Close the list of keys"));
}
