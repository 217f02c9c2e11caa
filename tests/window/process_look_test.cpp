// How the process scene looks: against pictures of it that somebody has looked at and found good
// (tests/window/golden), compared by how different they look (tests/picture/perceptual.h).
// Renewed, after a look at each, by OVERBEND_RENEW_PICTURES=1.

#include <doctest/doctest.h>

#include <filesystem>

#include "tests/picture/perceptual.h"
#include "tests/window/process_session.h"

using namespace overbend;
using tests::Session;
using K = sf::Keyboard;

namespace {

// A piece of a screenshot.
render::Pixels piece(const render::Pixels& whole, const render::Rect& box) {
    render::Pixels part;
    part.width = static_cast<int>(box.width), part.height = static_cast<int>(box.height);
    const int x = static_cast<int>(box.x), y = static_cast<int>(box.y);
    for (int row = 0; row < part.height; ++row) {
        const auto from = whole.bgra.begin() + 4 * (static_cast<std::ptrdiff_t>(y + row) * whole.width + x);
        part.bgra.insert(part.bgra.end(), from, from + 4 * static_cast<std::ptrdiff_t>(part.width));
    }
    return part;
}

void compare(Session& s, const std::string& control, const std::string& name) {
    CAPTURE(name);
    s.user.point_at({3.0, 3.0});  // off everything that would tell something beside the pointer
    const render::Pixels found = piece(s.user.screenshot(), s.user.find(control).box);
    const std::string file = "tests/window/golden/" + name + ".png";
    if (std::getenv("OVERBEND_RENEW_PICTURES") != nullptr) {
        render::write_whole(file, render::png_bytes(found));
        return;
    }
    const tests::Difference d = tests::difference(tests::read_png(file), found);
    CAPTURE(d.greatest);
    CAPTURE(d.mean);
    const bool alike = look_alike(d);
    CHECK(alike);
    if (alike) return;
    const std::filesystem::path there =
        std::filesystem::temp_directory_path() / ("overbend_" + name + ".png");
    render::write_whole(there, render::png_bytes(found));
    MESSAGE("what was painted lies in " << there.string());
}

}  // namespace

TEST_CASE("picture, timeline and charts of a section look like the golden ones") {
    scenes::Remembered r;
    r.width = 1024, r.height = 640;
    Session s("wrong-order", r);
    const scenes::Stretch stroke = s.reel().strokes[1];
    s.scrub_to(std::floor(stroke.first + 0.5 * (stroke.last - stroke.first)));
    s.key(K::Period), s.key(K::Comma);  // to a whole frame
    const scenes::Stretch hit = s.reel().interferences.front();
    s.key(K::I);
    REQUIRE(s.at() == hit.first);
    s.user.wheel(s.corner() + s.shown()->view.stage.centre(), -2.0);
    REQUIRE(s.user.wait());
    compare(s, "Timeline", "timeline");
    compare(s, "Picture", "process_farther");
    s.key(K::F);
    s.key(K::N);
    compare(s, "Section charts", "section_charts");
    s.key(K::F4);
    compare(s, "Picture", "process_dark");
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
        scenes::Remembered r;
        r.width = screen.width, r.height = screen.height;
        Session s("wrong-order", r, screen.scale);
        for (const char* words : {"Play", "Stroke back", "Frame back", "Frame on", "Stroke on", "Loop",
                                  "Slower", "Faster", "First interference", "Fit", "Nearer", "Farther",
                                  "Section", "Charts", "Magnifier", "Colours", "Springback", "Timeline"}) {
            CAPTURE(words);
            const render::Control c = s.user.find(words);
            CHECK(c.box.x >= 0.0);
            CHECK(c.box.right() <= s.window.width());
            CHECK(c.box.bottom() <= s.window.height());
        }
        const render::Rect picture = s.user.find("Picture").box;
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
