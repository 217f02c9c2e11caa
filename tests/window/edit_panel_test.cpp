// The panels of the process: the case changed, run anew, undone and saved; findings that lead to their place.

#include <doctest/doctest.h>

#include <cstdlib>

#include "scenes/case/read_case.h"
#include "scenes/window/main_show.h"
#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"
#include "tests/window/script.h"

using namespace overbend;
using K = sf::Keyboard;

namespace {

struct Panels {
    explicit Panels(const std::filesystem::path& file, int width = 1280, int height = 720)
        : show(remembered(width, height), file), window(options(width, height)), user(window, show) {
        REQUIRE(user.wait());
    }
    static scenes::Remembered remembered(int width, int height) {
        scenes::Remembered r;
        r.width = width, r.height = height;
        return r;
    }
    static render::WindowOptions options(int width, int height) {
        render::WindowOptions o;
        o.width = width, o.height = height;
        return o;
    }
    scenes::MainShow show;
    render::Window window;
    tests::Script user;
};

}  // namespace

TEST_CASE(
    "a size that is typed is run at once, undone and done again by keys, and saved to a file of its own") {
    const tests::OwnFolder folder;
    const std::filesystem::path file = folder.write("case.toml", tests::small_case);
    Panels on(file);
    tests::Script& user = on.user;
    user.click("Case");
    user.type("Thickness", "0.8");
    REQUIRE(user.wait());
    user.key(K::Z, true);
    REQUIRE(user.wait());
    user.key(K::Y, true);
    REQUIRE(user.wait());
    user.key(K::S, true);
    REQUIRE(user.has("Write it"));
    user.click("Write it");
    CHECK(tests::bytes_of(file) == tests::small_case);
    CHECK(scenes::read_case(folder / "case-changed.toml").thickness == 0.8);
}

TEST_CASE("the opened file is written over when that is asked for, and not before") {
    const tests::OwnFolder folder;
    const std::filesystem::path file = folder.write("case.toml", tests::small_case);
    Panels on(file);
    tests::Script& user = on.user;
    user.click("Case");
    user.type("Friction", "0.2");
    REQUIRE(user.wait());
    user.click("Save...");
    user.type("File", file.string());
    user.click("Write it");
    CHECK(tests::bytes_of(file) == tests::small_case);
    user.click("Write over it");
    CHECK(scenes::read_case(file).run.friction == 0.2);
}

TEST_CASE("steps change places, by their buttons and keys; an order that cannot be leaves the last picture") {
    const tests::OwnFolder folder;
    Panels on(folder.write("case.toml", tests::small_case));
    tests::Script& user = on.user;
    user.click("Case");
    REQUIRE(user.has("1  first: 60 deg free"));
    user.click("Later");
    REQUIRE(user.wait());
    CHECK(user.has("1  second: the drawing's angle"));
    user.key(K::Up, true);
    REQUIRE(user.wait());
    CHECK(user.has("1  first: 60 deg free"));
}

TEST_CASE("look at panels") {
    if (!std::getenv("SHOT")) return;
    Panels on(std::getenv("CASE"), std::atoi(std::getenv("W")), std::atoi(std::getenv("H")));
    tests::Script& user = on.user;
    user.click("Case");
    REQUIRE(user.wait());
    user.save("/tmp/e2_case.png");
    user.click("Findings");
    REQUIRE(user.wait());
    user.save("/tmp/e2_findings.png");
    user.click("Figures");
    REQUIRE(user.wait());
    user.save("/tmp/e2_figures.png");
    for (const char* page : {"Blank", "Press", "Tools", "Cost"}) {
        user.click(page);
        REQUIRE(user.wait());
        user.save(std::string("/tmp/e2_") + page + ".png");
    }
    user.click("Export");
    REQUIRE(user.wait());
    user.save("/tmp/e2_export.png");
}
