// A user who can be trusted to do the same every time: events as SFML would tell them, put into a window by a
// script. Controls are found by the words that stand on them.

#pragma once

#include <string>

#include "render/ui/window.h"

namespace overbend::tests {

class Script {
  public:
    Script(ui::Window& window, ui::Show& show);

    // Frames go by until nothing moves any more, at most so many seconds. True when it has come to rest.
    bool wait(double seconds = 60.0);
    void frames(int count);

    // The control with these words, scrolled to if it has to be. Throws std::runtime_error: there is none.
    ui::Control find(const std::string& words);
    bool has(const std::string& words) const;

    void click(const std::string& words);
    void point_at(const picture::Point& at);  // window px
    void click_at(const picture::Point& at);
    void double_click_at(const picture::Point& at);
    void drag(const picture::Point& from, const picture::Point& to,
              sf::Mouse::Button button = sf::Mouse::Left);
    void wheel(const picture::Point& at, double notches);
    void key(sf::Keyboard::Key code, bool ctrl = false, bool shift = false);
    // Into a control of text or a number: its words are replaced, and Enter pressed.
    void type(const std::string& words, const std::string& text);
    // To whatever takes letters.
    void letters(const std::string& text);
    // One of a choice's list.
    void choose(const std::string& words, const std::string& entry);

    ui::Window& window() { return *window_; }
    picture::Pixels screenshot() { return window_->screenshot(*show_); }
    void save(const std::string& file);  // a screenshot, as PNG

  private:
    void send(const sf::Event& event);
    void move(const picture::Point& at);
    void button(sf::Mouse::Button button, bool down, const picture::Point& at);
    ui::Window* window_;
    ui::Show* show_;
};

}  // namespace overbend::tests
