// What the window remembers: comes back, and never hinders.

#include "scenes/window/shared/remembered.h"

#include <doctest/doctest.h>

#include "tests/files/own_folder.h"

using namespace overbend::window;

TEST_CASE("what is remembered comes back") {
    const overbend::tests::OwnFolder folder;
    const std::filesystem::path file = folder.path() / "deeper" / "window.json";
    Remembered r;
    r.width = 1600, r.height = 900, r.dark = true, r.plastic_strain = true, r.lens = false;
    r.lens_at_pointer = true, r.charts = false, r.springback_scale = 5.0;
    r.speed = 0.5, r.last_case = "/a/b.toml", r.export_folder = "/a/out", r.scene = SceneKind::bench;
    r.panel = Panel::figures;
    r.bench = {true, 1.5, 2.0,  12.0,
               0.2,  0.4, 75.0, {{"dc01", 2e5, 210.0, 80.0}, {"copper", 1e5, 90.0, 60.0}}};
    write_remembered(file, r);
    const Remembered back = read_remembered(file);
    CHECK(back.width == 1600);
    CHECK(back.height == 900);
    CHECK(back.dark);
    CHECK(back.plastic_strain);
    CHECK_FALSE(back.lens);
    CHECK(back.lens_at_pointer);
    CHECK_FALSE(back.charts);
    CHECK(back.springback_scale == 5.0);
    CHECK(back.speed == 0.5);
    CHECK(back.last_case == "/a/b.toml");
    CHECK(back.export_folder == "/a/out");
    CHECK(back.scene == SceneKind::bench);
    CHECK(back.panel == Panel::figures);
    CHECK(back.bench.pure);
    CHECK(back.bench.thickness == 1.5);
    CHECK(back.bench.nose_radius == 2.0);
    CHECK(back.bench.opening == 12.0);
    CHECK(back.bench.friction == 0.2);
    CHECK(back.bench.way == 0.4);
    CHECK(back.bench.wanted == 75.0);
    REQUIRE(back.bench.metals.size() == 2);
    CHECK(back.bench.metals[0].card == "dc01");
    CHECK(back.bench.metals[0].modulus == 2e5);
    CHECK(back.bench.metals[1].yield == 90.0);
    CHECK(back.bench.metals[1].hardening == 60.0);
}

TEST_CASE("a file that is missing, broken or of other kinds changes nothing") {
    const overbend::tests::OwnFolder folder;
    CHECK(read_remembered(folder.path() / "none.json").width == 1280);
    CHECK(read_remembered({}).width == 1280);
    for (const char* text : {"", "{", "[1]", "{\"width\": \"wide\", \"speed\": null, \"dark\": 3}",
                             "{\"width\": 1e99, \"height\": -3, \"speed\": 1e9}",
                             "{\"bench\": {\"metals\": [3, null, {\"card\": 1}], \"way\": \"far\"}}",
                             "{\"bench\": {\"metals\": {}}, \"panel\": \"cellar\"}"}) {
        const Remembered r = read_remembered(folder.write("window.json", text));
        CHECK(r.width == 1280);
        CHECK(r.height == 720);
        CHECK(r.speed == 1.0);
        CHECK_FALSE(r.dark);
        CHECK(r.panel == Panel::none);
        CHECK(r.bench.way == 0.0);
    }
}

TEST_CASE("a place that cannot be written is left alone") {
    const overbend::tests::OwnFolder folder;
    const std::filesystem::path file = folder.write("file", "");
    write_remembered(file / "window.json", {});
    write_remembered({}, {});
    CHECK(std::filesystem::is_regular_file(file));
}
