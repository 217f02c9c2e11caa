// How both scenes look: against golden pictures of them, and on screens of all sizes.

#include <doctest/doctest.h>

#include <cmath>

#include "tests/window/golden.h"
#include "tests/window/process_session.h"

using namespace overbend;
using tests::Session;
using K = sf::Keyboard;

TEST_CASE("picture, timeline and charts of a section look like the golden ones") {
    window::Remembered r;
    r.width = 1024, r.height = 640;
    Session s("wrong-order", r);
    const window::Stretch stroke = s.playback().strokes[1];
    s.scrub_to(std::floor(stroke.first + 0.5 * (stroke.last - stroke.first)));
    s.key(K::Period), s.key(K::Comma);  // to a whole frame
    const window::Stretch hit = s.playback().interferences.front();
    s.key(K::I);
    REQUIRE(s.at() == hit.first);
    s.user.wheel(s.corner() + s.shown()->view.stage.centre(), -2.0);
    REQUIRE(s.user.wait());
    tests::compare_golden(s.user, "Timeline", "timeline");
    tests::compare_golden(s.user, "Picture", "process_zoomed_out");
    s.key(K::F);
    s.key(K::N);
    tests::compare_golden(s.user, "Section charts", "section_charts");
    s.key(K::F4);
    tests::compare_golden(s.user, "Picture", "process_dark");
}

TEST_CASE("the bench looks like the golden ones") {
    window::Remembered r;
    r.scene = window::SceneKind::bench;
    r.width = 1024, r.height = 640;
    window::MainShow show(r, {});
    ui::Window window(Session::options(r, 1.0));
    tests::Script user(window, show);
    REQUIRE(user.wait());
    tests::compare_golden(user, "Punch", "bench_pressed");
    user.click("Add strip");
    user.click("Dark");
    user.click("Release");
    REQUIRE(user.wait());
    tests::compare_golden(user, "Punch", "bench_two_free_dark");
    user.click("Pure bending");
    user.click("Release");
    REQUIRE(user.wait());
    tests::compare_golden(user, "Punch", "bench_pure_free_dark");
}

TEST_CASE("what is small, large or narrow is still whole") {
    struct Screen {
        const char* name;
        int width, height;
        double scale;
    };
    for (const Screen& screen :
         {Screen{"1280", 1280, 720, 1.0}, Screen{"1920", 1920, 1080, 1.0}, Screen{"dense", 1920, 1080, 2.0},
          Screen{"small", 800, 500, 1.0}, Screen{"small_dense", 1280, 720, 2.0}}) {
        CAPTURE(screen.name);
        window::Remembered r;
        r.width = screen.width, r.height = screen.height;
        Session s("wrong-order", r, screen.scale);
        for (const char* words :
             {"Play", "Previous stroke", "Previous frame", "Next frame", "Next stroke", "Loop", "Slower",
              "Faster", "First interference", "Fit", "Zoom in", "Zoom out", "Section", "Charts", "Magnifier",
              "Colours", "Springback", "Timeline"}) {
            CAPTURE(words);
            const ui::Control c = s.user.find(words);
            CHECK(c.box.x >= 0.0);
            CHECK(c.box.right() <= s.window.width());
            CHECK(c.box.bottom() <= s.window.height());
        }
        const picture::Rect picture = s.user.find("Picture").box;
        CHECK(picture.right() <= s.window.width());
        CHECK(picture.height > 0.3 * s.window.height());
        // Controls that have no room below are scrolled.
        CHECK(picture.bottom() <= s.user.find("Timeline").box.y + 1.0);
        s.key(K::I);
        s.keep(std::string("screen_") + screen.name);
        s.key(K::F1);
        s.keep(std::string("screen_") + screen.name + "_keys");
        s.key(K::Escape);
        for (const char* panel : {"Case", "Findings", "Figures"}) {
            s.click(panel);
            CHECK(s.user.find("Picture").box.x > 0.15 * s.window.width());  // beside it
            s.keep(std::string("screen_") + screen.name + "_" + panel);
        }
        s.click("Figures");  // no panel any more
        s.key(K::N);
        s.click("Dark");
        s.keep(std::string("screen_") + screen.name + "_section");
    }
}
