// The panels of the process: the case changed, run again, undone and saved; findings that lead to their
// place.

#include <doctest/doctest.h>

#include "scenes/files/case/read_case.h"
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
    static window::Remembered remembered(int width, int height) {
        window::Remembered r;
        r.width = width, r.height = height;
        return r;
    }
    static ui::WindowOptions options(int width, int height) {
        ui::WindowOptions o;
        o.width = width, o.height = height;
        return o;
    }
    window::MainShow show;
    ui::Window window;
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
    // Letters are refused, and say so; a comma is as good as a point.
    user.type("Thickness", "thin");
    REQUIRE(user.wait());
    CHECK(user.window().ui().refused().at("Thickness") == "\"thin\" is not a number");
    user.type("Thickness", "0,8");
    CHECK(user.window().ui().refused().empty());
    REQUIRE(user.wait());
    user.key(K::Z, true);
    REQUIRE(user.wait());
    user.key(K::Y, true);
    REQUIRE(user.wait());
    user.key(K::S, true);
    REQUIRE(user.has("Write file"));
    user.click("Write file");
    CHECK(tests::bytes_of(file) == tests::small_case);
    CHECK(files::read_case(folder / "case-changed.toml").thickness == 0.8);
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
    user.click("Write file");
    CHECK(tests::bytes_of(file) == tests::small_case);
    user.click("Overwrite");
    CHECK(files::read_case(file).run.friction == 0.2);
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

TEST_CASE("a change that cannot be is told at its place, and is undone") {
    const tests::OwnFolder folder;
    Panels on(folder.write("case.toml", tests::small_case));
    tests::Script& user = on.user;
    user.click("Case");
    user.click("wedge: vee-punch");
    user.type("Angle", "100");
    REQUIRE(user.wait());
    user.click("Save...");
    user.click("Write file");
    CHECK_FALSE(std::filesystem::exists(folder / "case-changed.toml"));
    user.key(K::Z, true);
    user.click("Write file");
    CHECK(std::filesystem::exists(folder / "case-changed.toml"));
}

TEST_CASE("materials are those that come with the program") {
    const tests::OwnFolder folder;
    Panels on(folder.write("case.toml", tests::small_case));
    tests::Script& user = on.user;
    user.click("Case");
    user.choose("Material", "dc04");
    REQUIRE(user.wait());
    user.click("Save...");
    user.click("Write file");
    CHECK(files::read_case(folder / "case-changed.toml").material.name == "dc04");
}

TEST_CASE("picture, film and report are written to the folder that is typed, or it is said what is wrong") {
    const tests::OwnFolder folder;
    Panels on(folder.write("case.toml", tests::small_case));
    tests::Script& user = on.user;
    user.click("Export");
    const std::filesystem::path out = folder / "out/deep";
    user.type("Folder", out.string());
    for (const char* what : {"PNG", "SVG", "PDF", "Report and sheets"}) {
        user.click(what);
        REQUIRE(user.wait());
    }
    std::string endings;
    for (const auto& [name, bytes] : tests::files_below(out)) {
        endings += name.substr(0, 6) + std::filesystem::path(name).extension().string() + " ";
        CHECK(bytes.size() > 1000);
    }
    CHECK(endings == "frame_.pdf frame_.png frame_.svg report.html sheets.pdf ");
    CHECK(on.show.remembered().export_folder == out.string());
    // A film is begun and given up: nothing is left of it.
    user.click("Film (MP4)");
    user.click("Cancel export");
    REQUIRE(user.wait());
    CHECK(tests::files_below(out).size() == 5);
    user.type("Folder", folder / "case.toml");
    user.click("PNG");
    REQUIRE(user.wait());
    CHECK(tests::bytes_of(folder / "case.toml") == tests::small_case);
}

TEST_CASE("findings are stepped through by keys, and the picture goes to them") {
    Panels on("cases/wrong-order/case.toml");
    tests::Script& user = on.user;
    user.click("Findings");
    const picture::Pixels before = user.screenshot();
    user.key(K::PageDown, false, true);
    REQUIRE(user.wait());
    const picture::Pixels after = user.screenshot();
    CHECK(before.bgra != after.bgra);
    user.click("1");
    REQUIRE(user.wait());
}
