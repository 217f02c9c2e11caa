// A thousand events of a user who presses whatever there is: nothing ends the program, nothing hangs. With
// the sanitizers nothing leaks, and no two threads meet.

#include <doctest/doctest.h>

#include <chrono>
#include <random>

#include "scenes/window/main_show.h"
#include "tests/files/own_folder.h"
#include "tests/window/script.h"

using namespace overbend;

namespace {

constexpr int events = 1000;

struct User {
    ui::Window& window;
    std::mt19937 draw;

    int number(int low, int high) { return std::uniform_int_distribution<int>(low, high)(draw); }

    void at(int& x, int& y) {
        const std::vector<ui::Control>& controls = window.ui().controls();
        // Half of the time on a control.
        if (!controls.empty() && number(0, 1) == 0) {
            const ui::Control& c =
                controls[static_cast<std::size_t>(number(0, static_cast<int>(controls.size()) - 1))];
            x = static_cast<int>(c.box.centre().x()), y = static_cast<int>(c.box.centre().y());
        } else {
            x = number(-10, window.width() + 10), y = number(-10, window.height() + 10);
        }
    }

    sf::Event event() {
        sf::Event e{};
        const int kind = number(0, 9);
        if (kind < 3) {
            e.type = sf::Event::MouseMoved;
            at(e.mouseMove.x, e.mouseMove.y);
        } else if (kind < 6) {
            e.type = number(0, 1) == 0 ? sf::Event::MouseButtonPressed : sf::Event::MouseButtonReleased;
            e.mouseButton.button = static_cast<sf::Mouse::Button>(number(0, 2));
            at(e.mouseButton.x, e.mouseButton.y);
        } else if (kind < 7) {
            e.type = sf::Event::MouseWheelScrolled;
            e.mouseWheelScroll.delta = static_cast<float>(number(-3, 3));
            at(e.mouseWheelScroll.x, e.mouseWheelScroll.y);
        } else if (kind < 9) {
            e.type = number(0, 1) == 0 ? sf::Event::KeyPressed : sf::Event::KeyReleased;
            e.key.code = static_cast<sf::Keyboard::Key>(number(0, sf::Keyboard::KeyCount - 1));
            e.key.control = number(0, 3) == 0, e.key.shift = number(0, 3) == 0;
            // Files are written by Ctrl+S, and the window is closed by Ctrl+Q: both have checks of their own.
            if (e.key.control && (e.key.code == sf::Keyboard::Q || e.key.code == sf::Keyboard::S))
                e.key.control = false;
        } else {
            const int what = number(0, 2);
            e.type = what == 0   ? sf::Event::TextEntered
                     : what == 1 ? sf::Event::LostFocus
                                 : sf::Event::GainedFocus;
            e.text.unicode = static_cast<sf::Uint32>(number(1, 0x2fff));
        }
        return e;
    }
};

}  // namespace

TEST_CASE("a thousand random events in either scene") {
    const tests::OwnFolder folder;
    const std::filesystem::path file = std::filesystem::absolute("cases/one-bend-dc01/case.toml");
    const tests::WorkingIn there(folder);
    for (const window::SceneKind kind : {window::SceneKind::process, window::SceneKind::bench}) {
        window::Remembered remembered;
        remembered.scene = kind;
        window::MainShow show(remembered, file);
        ui::Window window({});
        const unsigned seed = kind == window::SceneKind::process ? 20261u : 20262u;
        CAPTURE(seed);
        User user{window, std::mt19937(seed)};
        window.hurry();
        const auto begin = std::chrono::steady_clock::now();
        for (int i = 0; i < events; ++i) {
            window.handle(user.event());
            REQUIRE(window.turn(show));
            if (i % 20 == 0) window.screenshot(show);  // painted too, now and then
        }
        // It still answers: a key has its effect.
        tests::Script script(window, show);
        const picture::Theme before = show.theme();
        script.key(sf::Keyboard::Escape);
        script.key(sf::Keyboard::F4);
        CHECK(show.theme() != before);
        MESSAGE("seconds for ", events,
                " events: ", std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count());
    }
}
