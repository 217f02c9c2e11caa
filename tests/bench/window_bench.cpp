// What the window costs while it plays: the demo at 1920 x 1080, frames a second and what they are made of.
//
//   xvfb-run -a -s "-screen 0 1920x1200x24" env LIBGL_ALWAYS_SOFTWARE=1 build/release/bench_window
//
// Frames are counted, not timed one by one: a window that keeps up shows one for every look it takes at the
// clock. What bounds it is found by leaving parts out: the picture alone on a thread without a window; the
// window alone with a picture that stands still.

#include <sys/resource.h>

#include <chrono>
#include <cstdio>
#include <string>

#include "render/ui/display.h"
#include "render/ui/window.h"
#include "scenes/files/case/read_case.h"
#include "scenes/window/job/picture_painter.h"
#include "scenes/window/main_show.h"

using namespace overbend;
using Clock = std::chrono::steady_clock;

namespace {

constexpr int width = 1920, height = 1080;
constexpr double seconds = 12.0;

double seconds_since(Clock::time_point begin) {
    return std::chrono::duration<double>(Clock::now() - begin).count();
}

// Of all threads.
double processor_seconds() {
    rusage used{};
    ::getrusage(RUSAGE_SELF, &used);
    const auto in_seconds = [](const timeval& t) {
        return static_cast<double>(t.tv_sec) + 1e-6 * static_cast<double>(t.tv_usec);
    };
    return in_seconds(used.ru_utime) + in_seconds(used.ru_stime);
}

void press(ui::Window& window, ui::Show& show, sf::Keyboard::Key key) {
    sf::Event event{};
    event.key.code = key;
    event.type = sf::Event::KeyPressed;
    window.handle(event);
    window.turn(show);
    event.type = sf::Event::KeyReleased;
    window.handle(event);
    window.turn(show);
}

void rest(ui::Window& window, ui::Show& show) {
    for (int still = 0; still < 6;) {
        still = show.motion() == ui::Motion::still ? still + 1 : 0;
        window.turn(show);
    }
}

void play(const std::string& what, ui::Window& window, ui::Show& show) {
    press(window, show, sf::Keyboard::Space);
    const double used = processor_seconds();
    const int before = window.frames();
    const auto begin = Clock::now();
    while (seconds_since(begin) < seconds) window.turn(show);
    const double spent = seconds_since(begin);
    const int frames = window.frames() - before;
    std::printf("%s: %.1f frames a second, %.1f ms of a processor each\n", what.c_str(), frames / spent,
                1e3 * (processor_seconds() - used) / frames);
    press(window, show, sf::Keyboard::Space);
    rest(window, show);
}

// Pictures of the film one after the other, as the window asks for them, and none of it shown.
void paint_alone() {
    const std::atomic<bool> cancelled{false};
    window::RunProgress progress;
    const files::Case c = files::read_case("cases/cable-hook/case.toml");
    const auto job = std::make_shared<const window::RanJob>(run_job(c, window::Wanted(cancelled), progress));
    window::PictureRequest request;
    request.playback = make_playback(job, {width, height}, picture::Lens::shown, picture::Charts::shown);
    window::PicturePainter painter;
    int painted = 0;
    const auto begin = Clock::now();
    for (; seconds_since(begin) < 0.5 * seconds; request.at += 1.0) {
        painter.paint(request);
        std::optional<window::Painted> picture;
        while (!(picture = painter.take())) std::this_thread::yield();
        painter.give_back(*picture);
        ++painted;
    }
    std::printf("pictures of %d x %d painted, none shown: %.1f a second\n", width, height,
                painted / seconds_since(begin));
}

// The same frame over and over, as when the mouse moves about.
void show_alone(ui::Window& window, ui::Show& show) {
    const int before = window.frames();
    const double used = processor_seconds();
    const auto begin = Clock::now();
    sf::Event event{};
    event.type = sf::Event::MouseEntered;
    while (seconds_since(begin) < 0.5 * seconds) {
        window.handle(event);
        window.turn(show);
    }
    const int frames = window.frames() - before;
    std::printf("the window alone, nothing new in it: %.1f frames a second, %.1f ms of a processor each\n",
                frames / seconds_since(begin), 1e3 * (processor_seconds() - used) / frames);
}

}  // namespace

int main() {
    const ui::Screen screen;
    if (const std::optional<std::string> why = screen.why_not()) {
        std::printf("no window: %s\n", why->c_str());
        return 1;
    }
    paint_alone();
    window::Remembered remembered;
    remembered.width = width, remembered.height = height;
    window::MainShow show(remembered, std::filesystem::path("cases/cable-hook/case.toml"));
    ui::WindowOptions options;
    options.width = width, options.height = height;
    ui::Window window(options);
    rest(window, show);
    show_alone(window, show);
    play("playing", window, show);
    press(window, show, sf::Keyboard::N);
    rest(window, show);
    play("playing, with a section beside the picture", window, show);
    const int before = window.frames();
    for (int i = 0; i < 100; ++i) window.turn(show);
    std::printf("standing still: %d frames in a hundred turns\n", window.frames() - before);
    return 0;
}
