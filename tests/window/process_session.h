// A window with a case in it and a user before it.

#pragma once

#include <doctest/doctest.h>

#include <cstdlib>
#include <string>

#include "scenes/window/main_show.h"
#include "tests/window/script.h"

namespace overbend::tests {

struct Session {
    window::MainShow show;
    ui::Window window;
    Script user;

    explicit Session(const std::string& name, const window::Remembered& remembered = {}, double scale = 1.0)
        : show(remembered, std::filesystem::path("cases/" + name + "/case.toml")),
          window(options(remembered, scale)),
          user(window, show) {
        REQUIRE(user.wait());
        REQUIRE(shown());
    }

    static ui::WindowOptions options(const window::Remembered& remembered, double scale) {
        ui::WindowOptions o;
        o.width = remembered.width, o.height = remembered.height, o.scale = scale;
        return o;
    }

    const std::optional<window::Painted>& shown() { return show.process().shown(); }
    const window::Playback& playback() { return *shown()->request.playback; }
    double at() { return show.process().head().at; }

    picture::Point corner() {
        const ui::Control picture = user.find("Picture");
        return {picture.box.x, picture.box.y};
    }
    // Where a place of the press is in the window, by the picture that is shown.
    picture::Point on_screen(const picture::Place& place) {
        return corner() + shown()->view.on_picture(place);
    }
    picture::Place place_at(const picture::Point& at) {
        const picture::View& view = shown()->view;
        const picture::Point off = at - corner() - view.stage.centre();
        return {view.centre.x() + off.x() / view.scale, view.centre.y() - off.y() / view.scale};
    }
    stroke::State state() { return drawn_state(playback(), shown()->instant); }
    const stroke::Recording& recording() {
        return *playback().shown.strokes[shown()->instant.stroke].recording;
    }

    // To a frame, by pointing at the timeline.
    void scrub_to(double frame) {
        const ui::Control bar = user.find("Timeline");
        const double edge = 0.4 * 15.0;
        user.click_at({bar.box.x + edge + (bar.box.width - 2.0 * edge) * frame / playback().last(),
                       bar.box.centre().y()});
        REQUIRE(user.wait());
    }
    void click(const std::string& words) {
        user.click(words);
        REQUIRE(user.wait());
    }
    void key(sf::Keyboard::Key code, bool ctrl = false, bool shift = false) {
        user.key(code, ctrl, shift);
        REQUIRE(user.wait());
    }
    // A screenshot to look at, into the folder that OVERBEND_SCREENSHOTS names.
    void keep(const std::string& name) {
        if (const char* folder = std::getenv("OVERBEND_SCREENSHOTS"))
            user.save(std::string(folder) + "/" + name + ".png");
    }
};

}  // namespace overbend::tests
