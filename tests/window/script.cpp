#include "tests/window/script.h"

#include <SFML/System/Clock.hpp>
#include <stdexcept>

#include "render/output/whole_file.h"

namespace overbend::tests {

using picture::Point;
using ui::Control;

Script::Script(ui::Window& window, ui::Show& show) : window_(&window), show_(&show) {
    window.hurry();
    frames(4);
}

void Script::frames(int count) {
    const int end = window_->frames() + count;
    const sf::Clock clock;
    while (window_->frames() < end) {
        sf::Event nothing{};
        nothing.type = sf::Event::MouseEntered;
        window_->handle(nothing);  // a frame is due
        if (!window_->turn(*show_)) throw std::runtime_error("the window is closed: no frame comes any more");
        if (clock.getElapsedTime().asSeconds() > 30.0f) throw std::runtime_error("no frame in 30 s");
    }
}

bool Script::wait(double seconds) {
    const sf::Clock clock;
    while (clock.getElapsedTime().asSeconds() < seconds) {
        window_->turn(*show_);
        if (window_->rests() && show_->motion() == ui::Motion::still) return true;
    }
    return false;
}

bool Script::has(const std::string& words) const {
    for (const Control& c : window_->ui().controls())
        if (c.words == words) return true;
    return false;
}

Control Script::find(const std::string& words) {
    for (int tries = 0; tries < 60; ++tries) {
        const Control* found = nullptr;
        for (const Control& c : window_->ui().controls())
            if (c.words == words) found = &c;
        if (found == nullptr) break;
        const Point middle = found->box.centre();
        const bool inside = middle.y() > 0.0 && middle.y() < window_->height();
        if (found->visible && inside) return *found;
        // Scroll the panel that it is in.
        const Control at = *found;
        const double x = std::min(std::max(at.box.x + 4.0, 4.0), window_->width() - 4.0);
        wheel({x, 0.85 * window_->height()}, middle.y() > 0.5 * window_->height() ? -2.0 : 2.0);
    }
    std::string known;
    for (const Control& c : window_->ui().controls()) known += (known.empty() ? "" : ", ") + c.words;
    throw std::runtime_error("no control \"" + words + "\" is seen; there are: " + known);
}

void Script::send(const sf::Event& event) {
    window_->handle(event);
    window_->turn(*show_);
}

void Script::move(const Point& at) {
    sf::Event e{};
    e.type = sf::Event::MouseMoved;
    e.mouseMove.x = static_cast<int>(at.x()), e.mouseMove.y = static_cast<int>(at.y());
    send(e);
}

void Script::button(sf::Mouse::Button button, bool down, const Point& at) {
    sf::Event e{};
    e.type = down ? sf::Event::MouseButtonPressed : sf::Event::MouseButtonReleased;
    e.mouseButton.button = button;
    e.mouseButton.x = static_cast<int>(at.x()), e.mouseButton.y = static_cast<int>(at.y());
    send(e);
}

void Script::point_at(const Point& at) {
    move(at);
    frames(2);
}

void Script::click_at(const Point& at) {
    move(at);
    frames(1);
    button(sf::Mouse::Left, true, at);
    frames(1);
    button(sf::Mouse::Left, false, at);
    frames(2);
}

void Script::double_click_at(const Point& at) {
    move(at);
    for (int i = 0; i < 2; ++i) {
        button(sf::Mouse::Left, true, at);
        button(sf::Mouse::Left, false, at);
    }
    frames(2);
}

void Script::click(const std::string& words) {
    const Control c = find(words);
    Point at = c.box.centre();
    if (c.kind == ui::ControlKind::check) at.x() = c.box.x + 0.5 * c.box.height;
    click_at(at);
}

void Script::drag(const Point& from, const Point& to, sf::Mouse::Button which) {
    move(from);
    frames(1);
    button(which, true, from);
    constexpr int parts = 8;
    for (int i = 1; i <= parts; ++i) move(from + (to - from) * i / parts);
    button(which, false, to);
    frames(2);
}

void Script::wheel(const Point& at, double notches) {
    move(at);
    sf::Event e{};
    e.type = sf::Event::MouseWheelScrolled;
    e.mouseWheelScroll.wheel = sf::Mouse::VerticalWheel;
    e.mouseWheelScroll.delta = static_cast<float>(notches);
    e.mouseWheelScroll.x = static_cast<int>(at.x()), e.mouseWheelScroll.y = static_cast<int>(at.y());
    send(e);
    frames(1);
}

void Script::key(sf::Keyboard::Key code, bool ctrl, bool shift) {
    sf::Event e{};
    e.key.code = code, e.key.control = ctrl, e.key.shift = shift;
    e.type = sf::Event::KeyPressed;
    send(e);
    e.key.control = e.key.shift = false;
    e.type = sf::Event::KeyReleased;
    send(e);
    frames(2);
}

void Script::type(const std::string& words, const std::string& text) {
    const Control c = find(words);
    // Left in the box: a number's step buttons are at its right.
    double_click_at({c.box.x + 0.25 * c.box.width, c.box.centre().y()});
    key(sf::Keyboard::A, true);
    letters(text);
    key(sf::Keyboard::Enter);
    frames(2);
}

void Script::letters(const std::string& text) {
    for (const char letter : text) {
        sf::Event e{};
        e.type = sf::Event::TextEntered;
        e.text.unicode = static_cast<sf::Uint32>(static_cast<unsigned char>(letter));
        send(e);
    }
}

void Script::choose(const std::string& words, const std::string& entry) {
    click(words);
    click(words + ": " + entry);
}

void Script::save(const std::string& file) {
    output::write_whole(file, picture::png_bytes(screenshot()));
}

}  // namespace overbend::tests
