// What write_case writes is read back as the same case, field by field, and written again as the same text.

#include <doctest/doctest.h>

#include <cmath>
#include <filesystem>

#include "scenes/case/read_case.h"
#include "scenes/case/tool_outline.h"
#include "scenes/case/write_case.h"
#include "tests/case/whole_cases.h"
#include "tests/files/own_folder.h"

using namespace overbend;
using namespace overbend::scenes;
using overbend::tests::OwnFolder;

namespace {

bool near(double a, double b) {
    return std::abs(a - b) <= 1e-12 * std::max(1.0, std::abs(a));
}

void compare_tools(const Tool& a, const Tool& b) {
    CAPTURE(a.name);
    CHECK(a.name == b.name);
    CHECK(std::string(kind_word(a)) == kind_word(b));
    // outlines that are made of all their numbers
    const auto outline = [](const Tool& t) {
        const auto* die = std::get_if<tool::VeeDie>(&t.shape);
        return tool_outline(t, die ? static_cast<int>(die->faces.size()) : 1).pieces();
    };
    const std::vector<tool::Piece> pa = outline(a), pb = outline(b);
    REQUIRE(pa.size() == pb.size());
    for (std::size_t i = 0; i < pa.size(); ++i) {
        CHECK((pa[i].start - pb[i].start).norm() < 1e-9);
        CHECK(std::abs(pa[i].radius - pb[i].radius) < 1e-9);
        CHECK(std::abs(pa[i].sweep - pb[i].sweep) < 1e-9);
    }
    const auto spring = [](const Tool& t) -> const tool::Spring* {
        if (const auto* pad = std::get_if<Pad>(&t.shape)) return &pad->spring;
        const auto* clamp = std::get_if<Clamp>(&t.shape);
        return clamp && clamp->spring ? &*clamp->spring : nullptr;
    };
    REQUIRE((spring(a) == nullptr) == (spring(b) == nullptr));
    if (spring(a)) {
        CHECK(near(spring(a)->preload, spring(b)->preload));
        CHECK(near(spring(a)->rate, spring(b)->rate));
        CHECK(near(spring(a)->solid, spring(b)->solid));
    }
    if (const auto* punch = std::get_if<WipingPunch>(&a.shape))
        CHECK(near(punch->clearance, std::get<WipingPunch>(b.shape).clearance));
}

void compare_steps(const Step& a, const Step& b) {
    CHECK(a.name == b.name);
    CHECK(a.bends == b.bends);
    CHECK(a.punch == b.punch);
    CHECK(a.die == b.die);
    CHECK(a.die_face == b.die_face);
    CHECK(a.pad == b.pad);
    CHECK(a.clamp == b.clamp);
    CHECK(a.clamp_on == b.clamp_on);
    CHECK(a.face == b.face);
    CHECK(a.first == b.first);
    CHECK(near(a.shift, b.shift));
    CHECK(a.stop == b.stop);
    CHECK(near(a.stop_value, b.stop_value));
}

void compare(const Case& a, const Case& b) {
    CHECK(a.title == b.title);
    CHECK(a.material.title == b.material.title);
    CHECK(near(a.material.youngs_modulus, b.material.youngs_modulus));
    CHECK(a.material.hardening.index() == b.material.hardening.index());
    CHECK(a.material.backstress.size() == b.material.backstress.size());
    CHECK(a.material.modulus_drop.has_value() == b.material.modulus_drop.has_value());
    CHECK(near(a.material.r_value, b.material.r_value));
    CHECK(near(a.material.tensile_strength, b.material.tensile_strength));
    CHECK(near(a.material.elongation, b.material.elongation));
    CHECK(a.thickness == b.thickness);
    CHECK(a.width == b.width);
    CHECK(a.blank_length == b.blank_length);
    CHECK(a.bend_lines == b.bend_lines);
    CHECK(a.rolling == b.rolling);
    CHECK(a.part.flats == b.part.flats);
    CHECK(near(a.part.angle_tolerance, b.part.angle_tolerance));
    REQUIRE(a.part.bends.size() == b.part.bends.size());
    for (std::size_t i = 0; i < a.part.bends.size(); ++i) {
        CHECK(a.part.bends[i].name == b.part.bends[i].name);
        CHECK(near(a.part.bends[i].angle, b.part.bends[i].angle));
        CHECK(a.part.bends[i].inside_radius == b.part.bends[i].inside_radius);
    }
    REQUIRE(a.cutouts.size() == b.cutouts.size());
    for (std::size_t i = 0; i < a.cutouts.size(); ++i) {
        CHECK(a.cutouts[i].at == b.cutouts[i].at);
        CHECK(a.cutouts[i].across == b.cutouts[i].across);
        CHECK(a.cutouts[i].length == b.cutouts[i].length);
        CHECK(a.cutouts[i].width == b.cutouts[i].width);
    }
    REQUIRE(a.tools.size() == b.tools.size());
    for (std::size_t i = 0; i < a.tools.size(); ++i) compare_tools(a.tools[i], b.tools[i]);
    REQUIRE(a.steps.size() == b.steps.size());
    for (std::size_t i = 0; i < a.steps.size(); ++i) compare_steps(a.steps[i], b.steps[i]);
    REQUIRE(a.press.has_value() == b.press.has_value());
    if (a.press) {
        CHECK(a.press->title == b.press->title);
        CHECK(a.press->force == b.press->force);
        CHECK(a.press->stroke == b.press->stroke);
        CHECK(a.press->ram.has_value() == b.press->ram.has_value());
        CHECK(a.press->gauge.has_value() == b.press->gauge.has_value());
    }
    CHECK(a.handling.tool_change == b.handling.tool_change);
    CHECK(a.handling.stroke == b.handling.stroke);
    CHECK(a.run.friction == b.run.friction);
    CHECK(a.run.layers == b.run.layers);
    CHECK(a.run.elements_per_thickness == b.run.elements_per_thickness);
    CHECK(a.run.gravity == b.run.gravity);
}

void round_trip(const std::filesystem::path& file) {
    CAPTURE(file.string());
    const OwnFolder folder;
    const Case read = read_case(file);
    const std::string text = write_case(read, "A comment,\nof two lines.");
    const Case again = read_case(folder.write("case.toml", text));
    compare(read, again);
    CHECK(write_case(again, "A comment,\nof two lines.") == text);
}

}  // namespace

TEST_CASE("every case that comes along is written as it was read") {
    int cases = 0;
    for (const auto& entry : std::filesystem::directory_iterator("cases")) {
        if (!entry.is_directory()) continue;
        round_trip(entry.path() / "case.toml");
        ++cases;
    }
    CHECK(cases > 5);
}

TEST_CASE("every key and every kind of tool is written") {
    const OwnFolder folder;
    round_trip(folder.write("whole.toml", tests::whole_case));
    round_trip(folder.write("pressed.toml", tests::pressed_case));
}

TEST_CASE("a card from a file beside the case is named so that it is found from elsewhere") {
    const OwnFolder folder, elsewhere;
    folder.write("card.toml", tests::swift_card);
    std::string text = tests::pressed_case;
    const std::size_t at = text.find("material = ");
    text.replace(at, text.find('\n', at) - at, "material = \"card.toml\"");
    const Case read = read_case(folder.write("case.toml", text));
    const Case again = read_case(elsewhere.write("case.toml", write_case(read, "")));
    compare(read, again);
}
