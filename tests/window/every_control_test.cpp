// A user who goes through both scenes and uses every control that he comes upon, once. What cannot be used
// when it is first seen (Undo, before there is a change) is come back to.

#include <doctest/doctest.h>

#include <set>

#include "scenes/window/main_show.h"
#include "tests/files/own_folder.h"
#include "tests/window/script.h"

using namespace overbend;
using picture::Point;
using ui::Control;
using ui::ControlKind;

namespace {

using Words = std::set<std::string>;

bool is_used(const ui::Window& window, const std::string& words) {
    const auto found = window.ui().used().find(words);
    return found != window.ui().used().end() && found->second > 0;
}

// A number that the field beside a slider takes.
std::string typed_number(const std::string& words) {
    return words == "Modulus, typed"                                   ? "150"
           : words == "Yield, typed" || words == "Hardening, typed"    ? "333"
           : words == "Opening, typed"                                 ? "9,5"
           : words == "Springback, typed"                              ? "3"
           : words == "Friction, typed" || words == "Curvature, typed" ? "0.13"
                                                                       : "1,05";
}

// Whether something with these words has been done: entries of an opened list count for their choice.
void use(tests::Script& user, const Control& seen) {
    const Control c = user.find(seen.words);
    const Point middle = c.box.centre();
    switch (c.kind) {
        case ControlKind::slider:
            user.drag({c.box.x + 0.3 * c.box.width, middle.y()}, {c.box.x + 0.6 * c.box.width, middle.y()});
            break;
        case ControlKind::number:  // its step's button, at the right end
            user.click_at({c.box.right() - 0.5 * c.box.height, middle.y()});
            break;
        case ControlKind::picture:
            user.wheel(middle, 1.0);
            user.drag(middle, middle + Point(15.0, 12.0));
            break;
        case ControlKind::choice: {
            user.click(c.words);
            std::vector<std::string> entries;  // that are seen without scrolling
            for (const Control& each : user.window().ui().controls())
                if (each.words.rfind(c.words + ": ", 0) == 0 && each.visible) entries.push_back(each.words);
            if (!entries.empty()) user.click(entries[entries.size() / 2]);
            break;
        }
        case ControlKind::text:  // a slider's field takes numbers
            user.type(c.words, c.words.find(", typed") == std::string::npos ? "x" : typed_number(c.words));
            break;
        default:
            user.click(c.words);
    }
}

// Goes on until nothing new is found. Returns what was seen, could be used, and was never.
Words go_through(tests::Script& user, const Words& left_alone) {
    Words tried, missing;
    for (int round = 0; round < 400; ++round) {
        const Control* next = nullptr;
        for (const Control& c : user.window().ui().controls()) {
            const bool in_a_list = c.words.find(": ") != std::string::npos && c.kind == ControlKind::entry;
            if (c.box.width <= 0.0 || in_a_list || !c.enabled || left_alone.count(c.words) > 0) continue;
            if (is_used(user.window(), c.words) || tried.count(c.words) > 0) continue;
            next = &c;
            break;
        }
        if (next == nullptr) break;
        const Control chosen = *next;
        tried.insert(chosen.words);
        try {
            use(user, chosen);
        } catch (const std::exception&) {  // gone meanwhile: another round may find it
        }
        user.wait(20.0);
        if (!is_used(user.window(), chosen.words)) missing.insert(chosen.words);
    }
    for (auto it = missing.begin(); it != missing.end();)
        it = is_used(user.window(), *it) ? missing.erase(it) : std::next(it);
    return missing;
}

std::string listed(const Words& words) {
    std::string text;
    for (const std::string& w : words) text += (text.empty() ? "" : ", ") + w;
    return text;
}

}  // namespace

TEST_CASE("every control of the bench does something when it is used") {
    window::Remembered remembered;
    remembered.scene = window::SceneKind::bench;
    window::MainShow show(remembered, {});
    ui::WindowOptions options;
    options.width = 1600, options.height = 1000;
    ui::Window window(options);
    tests::Script user(window, show);
    user.wait();
    const Words missing = go_through(user, {"Process", "Keys"});
    CHECK_MESSAGE(missing.empty(), listed(missing));
    CHECK(window.ui().used().size() > 20);
}

TEST_CASE("every control of the process and its panels does something when it is used") {
    const tests::OwnFolder folder;
    const std::filesystem::path file =
        folder.write("case.toml", tests::bytes_of("cases/one-bend-dc01/case.toml"));
    const tests::WorkingIn there(folder);
    window::MainShow show({}, file);
    ui::WindowOptions options;
    options.width = 1600, options.height = 1000;
    ui::Window window(options);
    tests::Script user(window, show);
    REQUIRE(user.wait());
    const Words left_alone = {"Bench", "Keys"};
    Words missing;
    for (const sf::Keyboard::Key panel :
         {sf::Keyboard::Num1, sf::Keyboard::Num2, sf::Keyboard::Num3, sf::Keyboard::Num4}) {
        user.key(panel);
        user.wait();
        for (const std::string& words : go_through(user, left_alone)) missing.insert(words);
    }
    for (auto it = missing.begin(); it != missing.end();)
        it = is_used(window, *it) ? missing.erase(it) : std::next(it);
    CHECK_MESSAGE(missing.empty(), listed(missing));
    CHECK(window.ui().used().size() > 35);
}
