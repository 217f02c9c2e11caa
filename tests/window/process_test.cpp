// The process of a case in the window: played, scrubbed, zoomed, looked into.

#include <doctest/doctest.h>

#include <cstdlib>

#include "scenes/window/main_show.h"
#include "tests/window/script.h"

using namespace overbend;

TEST_CASE("look") {
    if (!std::getenv("SHOT")) return;
    scenes::Remembered r;
    r.width = std::atoi(std::getenv("W")), r.height = std::atoi(std::getenv("H"));
    scenes::MainShow show(r, std::filesystem::path(std::getenv("CASE")));
    render::WindowOptions o;
    o.width = r.width, o.height = r.height;
    if (std::getenv("SCALE")) o.scale = std::atof(std::getenv("SCALE"));
    render::Window window(o);
    tests::Script user(window, show);
    REQUIRE(user.wait());
    user.save("/tmp/pw/a.png");
    render::Control bar = user.find("Timeline");
    user.click_at({bar.box.x + 0.26 * bar.box.width, bar.box.centre().y()});
    REQUIRE(user.wait());
    user.click("Section");
    REQUIRE(user.wait());
    user.click("Section");
    REQUIRE(user.wait());
    bar = user.find("Timeline");
    user.click_at({bar.box.x + 0.26 * bar.box.width, bar.box.centre().y()});
    REQUIRE(user.wait());
    user.save("/tmp/pw/b.png");
    const render::Control p = user.find("Picture");
    user.wheel({p.box.x + 0.4 * p.box.width, p.box.y + 0.5 * p.box.height}, 5);
    REQUIRE(user.wait());
    user.save("/tmp/pw/c.png");
    user.click("Dark");
    user.click("Findings");
    REQUIRE(user.wait());
    user.click("Fit");
    REQUIRE(user.wait());
    user.save("/tmp/pw/d.png");
}
