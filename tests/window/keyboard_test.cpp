// The keyboard alone: Tab goes to every control of both scenes and their panels, and what is framed is used
// by Space, arrows and letters.

#include <doctest/doctest.h>

#include <set>

#include "tests/window/process_session.h"

using namespace overbend;
using tests::Session;
using ui::Control;
using ui::ControlKind;
using K = sf::Keyboard;

namespace {

std::set<std::string> to_be_framed(const ui::Window& window) {
    std::set<std::string> words;
    for (const Control& c : window.ui().controls())
        if (c.enabled && c.box.width > 0.0 && c.kind != ControlKind::picture) words.insert(c.words);
    return words;
}

// Once round by Tab: what was framed on the way.
std::set<std::string> once_round(tests::Script& user, bool shift) {
    std::set<std::string> framed;
    for (std::size_t i = 0; i < to_be_framed(user.window()).size(); ++i) {
        user.key(K::Tab, false, shift);
        user.wait();
        framed.insert(user.window().ui().framed());
    }
    return framed;
}

}  // namespace

TEST_CASE("Tab goes to every control and round again, and what is framed is seen") {
    Session s("one-bend-dc01");
    CHECK(once_round(s.user, false) == to_be_framed(s.window));
    for (const K::Key panel : {K::Num1, K::Num2, K::Num3, K::Num4}) {
        s.key(panel);
        CHECK(once_round(s.user, false) == to_be_framed(s.window));
        CHECK(once_round(s.user, true) == to_be_framed(s.window));
        for (int i = 0; i < 12; ++i) {
            s.key(K::Tab);
            const std::string framed = s.window.ui().framed();
            CAPTURE(framed);
            CHECK(s.user.find(framed).visible);
        }
    }
    s.user.key(K::F3);
    s.user.wait();
    CHECK(once_round(s.user, false) == to_be_framed(s.window));
}

TEST_CASE("a panel is scrolled by keys") {
    window::Remembered low;
    low.height = 480;
    Session s("one-bend-dc01", low);
    s.key(K::Num1);
    const double before = s.user.find("Material").box.y;
    const auto now = [&] {
        for (const Control& c : s.window.ui().controls())
            if (c.words == "Material") return c.box.y;
        return before;
    };
    s.key(K::PageDown, true);
    CHECK(now() < before - 20.0);
    s.key(K::PageUp, true);
    CHECK(now() == before);
}

TEST_CASE("a case is changed by the keyboard alone") {
    Session s("one-bend-dc01");
    const auto go_to = [&](const std::string& words) {
        for (int i = 0; i < 100 && s.window.ui().framed() != words; ++i) s.key(K::Tab);
        REQUIRE(s.window.ui().framed() == words);
    };
    const double before = s.show.process().job()->c.thickness;
    go_to("Case");
    s.key(K::Space);
    go_to("Thickness");
    s.user.letters("0.8");
    s.key(K::Tab);  // leaves the field, and what was typed stands
    CHECK(before != 0.8);
    CHECK(s.show.process().job()->c.thickness == 0.8);
    // A list is opened, gone through and chosen from.
    const std::string material = s.show.process().job()->c.material.name;
    go_to("Material");
    s.key(K::Space);
    s.key(K::Down);
    s.key(K::Space);
    CHECK(s.show.process().job()->c.material.name != material);
    s.keep("keyboard");
    // The frame is gone when the mouse is used.
    s.click("Fit");
    s.user.key(K::Space);
    CHECK(s.show.process().head().playing == window::Playing::yes);
}
