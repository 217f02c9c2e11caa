// The panels of the process: the case changed, run again, undone and saved; findings that lead to their
// place.

#include <doctest/doctest.h>

#include "scenes/files/case/read_case.h"
#include "scenes/window/main_show.h"
#include "scenes/window/panels/findings_panel.h"
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
    // A film is begun; closing the window asks first. It is given up: nothing is left of it.
    user.click("Film (MP4)");
    user.key(K::Q, true);
    CHECK_FALSE(on.show.over());
    user.click("Keep open");
    user.click("Cancel export");
    REQUIRE(user.wait());
    CHECK(tests::files_below(out).size() == 5);
    user.type("Folder", folder / "case.toml");
    user.click("PNG");
    REQUIRE(user.wait());
    CHECK(tests::bytes_of(folder / "case.toml") == tests::small_case);
}

TEST_CASE("a picture is written by its key while no panel is open") {
    const tests::OwnFolder folder;
    window::Remembered r;
    r.export_folder = (folder.path() / "out").string();
    window::MainShow show(r, folder.write("case.toml", tests::small_case));
    ui::Window window(Panels::options(1280, 720));
    tests::Script user(window, show);
    REQUIRE(user.wait());
    CHECK_FALSE(user.has("Folder"));
    user.key(K::P, true);
    REQUIRE(user.wait());
    CHECK(tests::files_below(folder.path() / "out").size() == 1);
    CHECK(user.has("Folder"));  // what came of it is seen
}

TEST_CASE("the verdict with its findings is seen in both scenes, and every placed finding has its ring") {
    Panels on("cases/wrong-order/case.toml");
    tests::Script& user = on.user;
    const window::ProcessScene& process = on.show.process();
    const job::Findings& all = process.job()->result.findings;
    const std::size_t problems = job::with(all, Severity::stops).size(),
                      cautions = job::with(all, Severity::caution).size();
    REQUIRE(problems > 0);
    REQUIRE(process.verdict());
    const std::string verdict = process.verdict()->words;
    CHECK(process.verdict()->standing == window::Standing::problem);
    CHECK(verdict.rfind("Not feasible: " + std::to_string(problems), 0) == 0);
    CHECK((verdict.find("caution") != std::string::npos) == (cautions > 0));
    CHECK(on.show.title() == "overbend: case.toml");
    user.click("Bench");
    user.click(verdict);
    REQUIRE(user.wait());
    REQUIRE(user.has("Next finding"));
    CHECK_FALSE(process.ring());
    int placed = 0;
    for (const job::Findings& group : job::alike(process.job()->c, job::by_severity(all))) {
        const std::optional<FindingPlace> place = seen_at(*process.job(), group.front());
        if (!place) continue;
        user.key(K::PageDown, false, true);
        REQUIRE(user.wait());
        if (!place->at) continue;
        ++placed;
        CAPTURE(placed);
        const std::optional<picture::Point> ring = process.ring();
        REQUIRE(ring);
        const picture::Rect stage = process.shown()->view.stage;
        CHECK(picture::holds(picture::grown(stage, -20.0), *ring));
    }
    CHECK(placed > 1);
    if (const char* shots = std::getenv("OVERBEND_SCREENSHOTS"))
        user.save(std::string(shots) + "/finding_ringed.png");
    // It belongs to its moment.
    user.key(K::Period);
    REQUIRE(user.wait());
    CHECK_FALSE(process.ring());
    // A run that is stopped leaves a picture that is not of the case.
    user.key(K::R);
    user.key(K::R);
    REQUIRE(user.wait());
    CHECK(process.verdict()->words == "Out of date");
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
