// One window, and the loop that runs it: events in, a frame when something has changed, sleep otherwise.
//
//   Window window({"overbend", 1280, 720});
//   window.run(show);                            // until it is closed
//
// All of it belongs to one thread, the one that made it.

#pragma once

#include <SFML/Window/Event.hpp>
#include <SFML/Window/Window.hpp>
#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "render/picture/painter.h"
#include "render/picture/palette.h"
#include "render/ui/drop_target.h"
#include "render/ui/ui.h"

namespace overbend::ui {

// Does something happen by itself, so that the next frame will differ from the last? awaiting: not yet, but
// something is being worked out that will be seen; no frame is painted for it.
enum class Motion { still, awaiting, moving };

// What a window shows.
class Show {
  public:
    Show() = default;
    virtual ~Show() = default;
    Show(const Show&) = delete;
    Show& operator=(const Show&) = delete;

    // Asked all the time, also between frames: takes in what other threads have finished. Must be quick.
    virtual Motion motion() = 0;
    // The whole window, from the upper left corner: size in pixels, seconds since the frame before.
    virtual void draw(Ui& ui, int width, int height, double seconds) = 0;
    // Files that were dropped on the window.
    virtual void dropped(const std::vector<std::filesystem::path>& files) = 0;
    virtual picture::Theme theme() const = 0;
    virtual std::string title() const = 0;
    // The window's frame was asked to close it. False: the show has something to ask first.
    virtual bool may_close() { return true; }
    // It is done, by a control of its own.
    virtual bool over() const { return false; }
};

struct WindowOptions {
    std::string title = "overbend";
    int width = 1280;  // px
    int height = 720;
    double scale = 1.0;  // of words and controls; see display.h
};

class Window {
  public:
    // Throws std::runtime_error: no window or no OpenGL in it, or no font. Ask a Screen first: where there is
    // no display SFML ends the program.
    explicit Window(const WindowOptions& options);
    ~Window();
    Window(const Window&) = delete;
    Window& operator=(const Window&) = delete;

    void run(Show& show);

    // A turn of the loop: all events, then a frame if one is due. False when the window was closed.
    bool turn(Show& show);

    // ---- for scripts
    // Frames as soon as they are due; since nobody looks at them they are painted for screenshots alone.
    void hurry() { pace_ = Pace::unbounded; }
    bool rests() const { return due_ == 0; }  // no frame is due
    void handle(const sf::Event& event);      // as if it had come from the screen
    picture::Pixels screenshot(Show& show);   // of a frame that is painted for it
    int frames() const { return frames_; }    // painted until now
    const Ui& ui() const { return ui_; }
    sf::WindowHandle handle_on_screen() const { return window_.getSystemHandle(); }
    int width() const { return static_cast<int>(window_.getSize().x); }
    int height() const { return static_cast<int>(window_.getSize().y); }

  private:
    enum class Pace { steady, unbounded };
    struct Imgui;  // the library's context
    void frame(Show& show, picture::Pixels* shot = nullptr);
    sf::Window window_;
    std::unique_ptr<Imgui> imgui_;
    std::unique_ptr<DropTarget> drops_;
    Ui ui_;
    std::string title_;
    picture::Theme theme_ = picture::Theme::light;
    sf::Clock since_frame_;
    Pace pace_ = Pace::steady;
    int due_ = 3;  // frames still to be painted; controls need a few to settle after an event
    int frames_ = 0;
    bool closing_ = false;  // asked for, not answered yet
    bool open_ = true;
};

}  // namespace overbend::ui
