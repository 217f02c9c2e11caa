// Files of the window: a case that is changed on disk while it is shown, files that cannot be opened, changes
// that no file has. What is offered and told, and that the picture stays.

#include <doctest/doctest.h>

#include <SFML/System/Clock.hpp>
#include <SFML/System/Sleep.hpp>
#include <cstdlib>

#include "scenes/files/case/read_case.h"
#include "scenes/window/main_show.h"
#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"
#include "tests/window/script.h"

using namespace overbend;
using tests::replaced;
using tests::small_case;
using K = sf::Keyboard;

namespace {

struct OnDisk {
    explicit OnDisk(int width = 1280, int height = 720, double scale = 1.0)
        : file(folder.write("case.toml", small_case)),
          show({}, file),
          window(options(width, height, scale)),
          user(window, show) {
        REQUIRE(user.wait());
    }
    static ui::WindowOptions options(int width, int height, double scale) {
        ui::WindowOptions o;
        o.width = width, o.height = height, o.scale = scale;
        return o;
    }
    // Turns of the window's loop until a control is there, at most twenty seconds; nobody touches anything.
    bool comes(const std::string& words) {
        for (const sf::Clock clock; clock.getElapsedTime().asSeconds() < 20.0f;) {
            if (user.has(words)) return true;
            window.turn(show);
        }
        return false;
    }
    // The same without a request.
    void goes_by(float seconds) {
        for (const sf::Clock clock; clock.getElapsedTime().asSeconds() < seconds;) window.turn(show);
    }
    void drop(const std::string& dropped) {
        show.dropped({dropped});
        user.frames(1);
    }
    double thickness() { return show.process().job()->c.thickness; }
    void keep(const std::string& name) {
        REQUIRE(user.wait());
        if (const char* to = std::getenv("OVERBEND_SCREENSHOTS"))
            user.save(std::string(to) + "/" + name + ".png");
    }

    tests::OwnFolder folder;
    std::filesystem::path file;
    window::MainShow show;
    ui::Window window;
    tests::Script user;
};

std::string with_thickness(const std::string& figure) {
    return replaced(small_case, "thickness_mm = 1.0", "thickness_mm = " + figure);
}

}  // namespace

TEST_CASE("a case that was changed on disk is offered, and taken in when that is asked for") {
    OnDisk on;
    on.goes_by(1.2f);
    CHECK_FALSE(on.user.has("Reload"));
    on.folder.write("case.toml", with_thickness("0.8"));
    REQUIRE(on.comes("Reload"));
    CHECK(on.thickness() == 1.0);
    on.keep("reload_offered");
    on.user.key(K::R, true);
    REQUIRE(on.user.wait());
    CHECK(on.thickness() == 0.8);
    CHECK_FALSE(on.user.has("Reload"));
    // What was left alone stays away.
    on.goes_by(1.2f);
    on.folder.write("case.toml", with_thickness("0.9"));
    REQUIRE(on.comes("Ignore"));
    on.user.click("Ignore");
    on.user.frames(2);
    CHECK_FALSE(on.user.has("Reload"));
    CHECK(on.thickness() == 0.8);
}

TEST_CASE("a mistake in a changed case is told, and the view goes on") {
    OnDisk on;
    on.goes_by(1.2f);
    on.folder.write("case.toml", with_thickness("-1"));
    REQUIRE(on.comes("Reload"));
    CHECK_FALSE(on.user.find("Reload").enabled);
    on.keep("reload_mistake");
    on.user.key(K::R, true);
    REQUIRE(on.user.wait());
    CHECK(on.thickness() == 1.0);
    CHECK(on.user.has("Picture"));
    on.folder.write("case.toml", with_thickness("0.8"));
    const auto can = [&] { return on.user.find("Reload").enabled; };
    for (const sf::Clock clock; !can() && clock.getElapsedTime().asSeconds() < 20.0f;)
        on.window.turn(on.show);
    on.user.click("Reload");
    REQUIRE(on.user.wait());
    CHECK(on.thickness() == 0.8);
}

TEST_CASE("saving from the window is no change by somebody else, and its file is watched from then on") {
    OnDisk on;
    on.user.click("Case");
    on.user.type("Thickness", "0.8");
    REQUIRE(on.user.wait());
    for (int i = 0; i < 40; ++i) on.user.key(K::Right);
    REQUIRE(on.user.wait());
    const double before = on.show.process().head().at;
    CHECK(before > 0.0);
    on.user.key(K::S, true);
    on.user.type("File", (on.folder.path() / "own.toml").string());
    if (on.user.has("Write file")) on.user.click("Write file");
    REQUIRE(std::filesystem::exists(on.folder.path() / "own.toml"));
    on.goes_by(1.5f);
    CHECK_FALSE(on.user.has("Reload"));
    CHECK(on.show.remembered().last_case == on.folder / "own.toml");
    CHECK(on.show.process().head().at == before);  // it is the same case
    on.user.click("Run");
    REQUIRE(on.user.wait());
    CHECK(on.show.process().head().at == before);
    on.folder.write("own.toml", with_thickness("0.7"));
    REQUIRE(on.comes("Reload"));
    on.user.click("Reload");
    REQUIRE(on.user.wait());
    CHECK(on.thickness() == 0.7);
}

TEST_CASE("a file that cannot be opened is told with its line beside what was there") {
    OnDisk on;
    const std::string bad = on.folder.write("bad.toml", with_thickness("\"much\""));
    on.drop(bad);
    REQUIRE(on.comes("Dismiss"));
    on.keep("not_opened");
    CHECK(on.user.has("Picture"));
    CHECK(on.thickness() == 1.0);
    on.user.key(K::L, true);
    on.user.frames(2);
    CHECK_FALSE(on.user.has("Dismiss"));
}

TEST_CASE("changes that no file has are not lost unasked") {
    OnDisk on;
    const std::string other = on.folder.write("other.toml", with_thickness("0.9"));
    on.user.click("Case");
    on.user.type("Thickness", "0.8");
    REQUIRE(on.user.wait());
    on.drop(other);
    REQUIRE(on.comes("Open without saving"));
    on.keep("unsaved_opening");
    on.user.click("Keep this case");
    REQUIRE(on.user.wait());
    CHECK_FALSE(on.user.has("Open without saving"));
    CHECK(on.thickness() == 0.8);

    sf::Event closed;
    closed.type = sf::Event::Closed;
    on.window.handle(closed);
    CHECK(on.window.turn(on.show));
    REQUIRE(on.comes("Close without saving"));
    on.keep("unsaved_closing");
    on.user.click("Keep open");
    on.user.frames(2);
    CHECK_FALSE(on.user.has("Close without saving"));

    on.drop(other);
    REQUIRE(on.comes("Open without saving"));
    on.user.key(K::O, true);
    REQUIRE(on.user.wait());
    CHECK(on.thickness() == 0.9);
    // Nothing is changed now, and nothing asked.
    on.window.handle(closed);
    CHECK_FALSE(on.window.turn(on.show));
}

TEST_CASE("once changes are saved, what was asked for goes on") {
    OnDisk on;
    const std::string other = on.folder.write("other.toml", with_thickness("0.9"));
    on.user.click("Case");
    const auto change_and_save = [&](const std::string& thickness, const std::string& name) {
        on.user.type("Thickness", thickness);
        REQUIRE(on.user.wait());
        if (name == "first.toml") on.drop(other);
        if (name == "second.toml") on.user.key(K::Q, true);
        on.user.key(K::S, true);
        on.user.type("File", (on.folder.path() / name).string());
    };
    change_and_save("0.8", "first.toml");
    REQUIRE(on.user.wait());
    CHECK(on.thickness() == 0.9);
    CHECK(std::filesystem::exists(on.folder.path() / "first.toml"));
    CHECK_FALSE(on.show.over());
    CHECK_THROWS(change_and_save("0.7", "second.toml"));  // no frame comes any more
    CHECK(on.show.over());
    CHECK(std::filesystem::exists(on.folder.path() / "second.toml"));
}

TEST_CASE("on leaving, the case is saved beside its file when that is asked for") {
    OnDisk on;
    on.user.click("Case");
    on.user.type("Thickness", "0,8");
    REQUIRE(on.user.wait());
    CHECK(on.show.title() == "overbend: case.toml (not saved)");
    on.user.key(K::Q, true);
    CHECK_THROWS(on.user.click("Save as case-changed.toml"));  // no frame comes any more
    CHECK(on.show.over());
    CHECK(files::read_case(on.folder.path() / "case-changed.toml").thickness == 0.8);
    CHECK(files::read_case(on.folder.path() / "case.toml").thickness == 1.0);
}

TEST_CASE("closing that is asked for twice is meant") {
    OnDisk on;
    on.user.click("Case");
    on.user.type("Thickness", "0.8");
    REQUIRE(on.user.wait());
    on.user.key(K::Q, true);
    CHECK(on.window.turn(on.show));
    CHECK(on.user.has("Close without saving"));
    sf::Event closed;
    closed.type = sf::Event::Closed;
    on.window.handle(closed);
    CHECK_FALSE(on.window.turn(on.show));
}
