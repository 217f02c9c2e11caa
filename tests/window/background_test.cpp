// Work beside the window: the newest request counts, and nothing is left behind.

#include "scenes/window/shared/background.h"

#include <doctest/doctest.h>

#include <chrono>
#include <stdexcept>

using overbend::window::Background;
using overbend::window::Wanted;

namespace {

template <class T>
std::optional<T> wait_for(Background<T>& background) {
    for (int i = 0; i < 2000; ++i) {
        if (std::optional<T> result = background.take()) return result;
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
    return {};
}

// Goes on until nobody wants it.
int for_ever(const Wanted& wanted) {
    while (true) wanted.check();
}

}  // namespace

TEST_CASE("what is asked for comes, once") {
    Background<int> background;
    background.start([](const Wanted&) { return 7; });
    CHECK(wait_for(background) == 7);
    CHECK_FALSE(background.take());
    CHECK_FALSE(background.busy());
}

TEST_CASE("a newer request ends the older one") {
    Background<int> background;
    background.start(for_ever);
    CHECK(background.busy());
    background.start([](const Wanted&) { return 8; });
    CHECK(wait_for(background) == 8);
}

TEST_CASE("what waits is replaced, what is being done is not") {
    Background<int> background;
    std::atomic<int> begun{0};
    std::atomic<bool> go_on{false};
    background.start([&](const Wanted&) {
        ++begun;
        while (!go_on) std::this_thread::yield();
        return 1;
    });
    while (begun == 0) std::this_thread::yield();
    background.start_next([&](const Wanted&) { return ++begun, 2; });
    background.start_next([&](const Wanted&) { return ++begun, 3; });
    go_on = true;
    std::optional<int> last;
    for (int i = 0; i < 2000 && last != 3; ++i) {
        if (const std::optional<int> result = background.take()) last = result;
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
    CHECK(last == 3);
    CHECK(begun == 2);
}

TEST_CASE("cancelled work brings nothing, and an end waits for no result") {
    Background<int> background;
    background.start(for_ever);
    background.cancel();
    for (int i = 0; i < 2000 && background.busy(); ++i)
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    CHECK_FALSE(background.busy());
    CHECK_FALSE(background.take());
    background.start(for_ever);  // the destructor ends it
}

TEST_CASE("what goes wrong in it is thrown where it is taken") {
    Background<int> background;
    background.start([](const Wanted&) -> int { throw std::runtime_error("no"); });
    CHECK_THROWS_AS(wait_for(background), std::runtime_error);
    background.start([](const Wanted&) { return 9; });
    CHECK(wait_for(background) == 9);
}
