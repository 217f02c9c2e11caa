// A case that is right, number by number.

#include "scenes/files/case/read_case.h"

#include <doctest/doctest.h>

#include <cmath>

#include "sim/units.h"
#include "tests/case/case_mistakes.h"
#include "tests/case/every_key.h"
#include "tests/case/whole_cases.h"
#include "tests/tolerance.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::tests;

namespace {

bool near(double found, double expected) {
    return relative_error(found, expected) < 1e-14;
}

double rad(double degrees) {
    return degrees * pi / 180.0;
}

template <class Shape>
const Shape& shape_of(const Case& job, std::size_t tool) {
    const Shape* shape = std::get_if<Shape>(&job.tools.at(tool).shape);
    REQUIRE(shape);
    return *shape;
}

// A text with the lines of these keys left out.
std::string without(std::string text, const std::vector<std::string>& paths) {
    for (const std::string& path : paths) {
        int line = 0;
        for (const KeyLine& key : every_key(text)) {
            if (key.path() == path) line = key.line;
        }
        CAPTURE(path);
        REQUIRE(line > 0);
        text = without_line(text, line);
    }
    return text;
}

}  // namespace

TEST_CASE("strip, material and drawing are read as they stand") {
    const Case job = case_of(whole_case);
    CHECK(job.title == "Clip with everything");
    CHECK(job.thickness == 1.0);
    CHECK(job.width == 20.5);
    CHECK(job.blank_length.value() == 150.0);
    CHECK(job.bend_lines == std::vector<double>{25.5, 47.5, 55.0, 82.0, 112.5});
    CHECK(job.rolling == Rolling::crosswise);
    CHECK(job.material.name == "material");
    CHECK(job.material.title == "Invented steel");
    CHECK(std::get<material::Swift>(job.material.hardening).n == 0.22);

    CHECK(job.part.flats == std::vector<double>{24.0, 20.0, 6.5, 25.0, 26.0, 15.0});
    REQUIRE(job.part.bends.size() == 5);
    CHECK(job.part.bends[0].name == "lip");
    CHECK(near(job.part.bends[0].angle, rad(90.0)));
    CHECK(job.part.bends[0].inside_radius == 1.5);
    CHECK(job.part.bends[1].name == "bend 2");
    CHECK(near(job.part.bends[2].angle, rad(-40.0)));
    CHECK(near(*job.part.angle_tolerance, rad(0.5)));
    CHECK(job.part.length_tolerance == 0.25);
    CHECK(job.part.radius_tolerance == 0.35);
    CHECK(job.part.profile_tolerance == 0.45);
    CHECK(job.part.leg_tolerances.at(0).either_way == 0.15);
    CHECK_FALSE(job.part.leg_tolerances.at(1).either_way);
    CHECK(near(*job.part.bends[0].tolerance.either_way, rad(0.75)));
    CHECK(job.part.bends[0].radius_tolerance.either_way == 0.55);
    CHECK(job.part.bends[1].tolerance.reference);
    CHECK_FALSE(job.part.bends[1].radius_tolerance.reference);

    REQUIRE(job.cutouts.size() == 2);
    CHECK(job.cutouts[0].at == 12.0);
    CHECK(job.cutouts[0].across == 10.0);
    CHECK(job.cutouts[0].width == 5.0);
    CHECK(job.cutouts[0].length == 5.0);
    CHECK(job.cutouts[1].length == 8.0);
    CHECK(job.cutouts[1].width == 4.2);
}

// By trigonometry: the corner of a groove of 60 degrees lies r tan(30 deg) inside its arc's centre, that of
// upright walls r.
TEST_CASE("a catalogue's opening, between the corners, is read as that between the arcs' centres") {
    const auto opening = [](const char* key, const std::string& kind) {
        std::string text = whole_case;
        const std::string at = kind == "open-die" ? "opening_mm = 8\nshoulder_radius_mm = 1\n"
                                                  : "angle_deg = 62\nopening_mm = 8\n";
        const std::string by = kind == "open-die" ? std::string(key) + " = 8\nshoulder_radius_mm = 1\n"
                                                  : "angle_deg = 60\n" + std::string(key) + " = 8\n";
        REQUIRE(text.find(at) != std::string::npos);
        text.replace(text.find(at), at.size(), by);
        const Case job = case_of(text);
        return kind == "open-die" ? shape_of<tool::OpenDie>(job, 2).die_opening
                                  : shape_of<tool::VeeDie>(job, 1).faces[1].die_opening;
    };
    CHECK(opening("opening_mm", "vee-die") == 8.0);
    CHECK(near(opening("opening_at_corners_mm", "vee-die"), 8.0 + 2.0 / std::sqrt(3.0)));
    CHECK(near(opening("opening_at_corners_mm", "open-die"), 10.0));
}

TEST_CASE("V tools are read as they stand") {
    const Case job = case_of(whole_case);
    REQUIRE(job.tools.size() == 8);
    CHECK(job.tools[1].name == "two-way");
    const auto& punch = shape_of<tool::VeePunch>(job, 0);
    CHECK(near(punch.angle, rad(60.0)));
    CHECK(punch.nose_radius == 1.0);
    CHECK(punch.height == 70.0);
    CHECK(punch.shank_width == 14.0);
    const auto& die = shape_of<tool::VeeDie>(job, 1);
    REQUIRE(die.faces.size() == 2);
    CHECK(near(die.faces[0].angle, rad(86.0)));
    CHECK(die.faces[0].die_opening == 10.0);
    CHECK(die.faces[0].shoulder_radius == 1.5);
    CHECK(die.faces[0].bottom_radius == 0.5);
    CHECK(die.faces[1].shoulder_radius == 1.0);
    CHECK(die.faces[1].bottom_radius == 0.4);
    CHECK(die.width == 40.0);
    CHECK(die.height == 50.0);
    const auto& slot = shape_of<tool::OpenDie>(job, 2);
    CHECK(slot.die_opening == 8.0);
    CHECK(slot.shoulder_radius == 1.0);
    CHECK(slot.depth == 20.0);
    CHECK(slot.width == 40.0);
}

TEST_CASE("offset and channel tools are read as they stand") {
    const Case job = case_of(whole_case);
    const auto& upper = shape_of<tool::OffsetPunch>(job, 3);
    CHECK(upper.offset == 5.0);
    CHECK(near(upper.angle, rad(40.0)));
    CHECK(upper.nose_radius == 1.0);
    CHECK(upper.root_radius == 1.0);
    CHECK(upper.clearance == 1.1);
    CHECK(upper.land == 12.0);
    CHECK(upper.height == 45.0);
    const auto& lower = shape_of<tool::OffsetDie>(job, 4);
    CHECK(lower.offset == 5.0);
    CHECK(near(lower.angle, rad(40.0)));
    CHECK(lower.shoulder_radius == 1.0);
    CHECK(lower.root_radius == 1.0);
    CHECK(lower.land == 12.0);
    CHECK(lower.height == 35.0);
    const auto& foot = shape_of<tool::ChannelPunch>(job, 5);
    CHECK(foot.width == 30.0);
    CHECK(foot.corner_radius == 2.0);
    CHECK(near(foot.side_relief, rad(3.0)));
    CHECK(foot.foot_height == 18.0);
    CHECK(foot.shank_width == 10.0);
    CHECK(foot.shank == tool::Shank::right);
    CHECK(foot.height == 55.0);
    const auto& channel = shape_of<tool::ChannelDie>(job, 6);
    CHECK(channel.die_opening == 32.4);
    CHECK(channel.shoulder_radius == 3.0);
    CHECK(channel.depth == 15.0);
    CHECK(channel.floor_crown == 0.2);
    CHECK(channel.width == 70.0);
    CHECK(channel.height == 40.0);
    // three lines, three quarters of a square's corners rounded or not, and one arc
    const auto& block = shape_of<OutlineTool>(job, 7);
    CHECK(block.outline.pieces().size() == 5);
}

TEST_CASE("steps, press and run are read as they stand") {
    const Case job = case_of(whole_case);
    REQUIRE(job.steps.size() == 3);
    CHECK(job.steps[0].bends == std::vector<int>{0});
    CHECK(job.steps[0].punch == 0);
    CHECK(job.steps[0].die == 1);
    CHECK(job.steps[0].die_face == 2);
    CHECK(job.steps[0].face == Face::up);
    CHECK(job.steps[0].first == First::right);
    CHECK(job.steps[0].shift == 0.25);
    CHECK(job.steps[0].stop == StopKind::free_angle);
    CHECK(near(job.steps[0].stop_value, rad(90.0)));
    CHECK(job.steps[1].bends == std::vector<int>{1, 2});  // in the blank's order, whatever the file's
    CHECK(job.steps[1].stop == StopKind::force);
    CHECK(job.steps[1].stop_value == 12.5);
    CHECK(job.steps[2].die == 6);
    CHECK(job.steps[2].stop == StopKind::travel);
    CHECK(job.steps[2].stop_value == 12.0);
    CHECK(job.press->title == "Bench press");
    CHECK(job.press->force == 40.0);
    CHECK(job.press->stroke == 80.0);
    CHECK(job.run.friction == 0.12);
    CHECK(job.run.layers == 15);
    CHECK(job.run.elements_per_thickness == 5.5);
}

TEST_CASE("what is left out has the values that are promised") {
    const Case job = case_of(without(whole_case, {"strip.blank_length_mm",
                                                  "strip.bend_lines_mm",
                                                  "strip.rolling",
                                                  "part.angle_tolerance_deg",
                                                  "part.length_tolerance_mm",
                                                  "part.path[2].tolerance_deg",
                                                  "tool[1].height_mm",
                                                  "tool[1].shank_width_mm",
                                                  "tool[2].width_mm",
                                                  "tool[2].height_mm",
                                                  "tool[3].depth_mm",
                                                  "tool[3].width_mm",
                                                  "tool[4].root_radius_mm",
                                                  "tool[4].land_mm",
                                                  "tool[4].height_mm",
                                                  "tool[5].root_radius_mm",
                                                  "tool[5].land_mm",
                                                  "tool[5].height_mm",
                                                  "tool[6].side_relief_deg",
                                                  "tool[6].shank_width_mm",
                                                  "tool[6].shank",
                                                  "tool[6].height_mm",
                                                  "tool[7].floor_crown_mm",
                                                  "tool[7].width_mm",
                                                  "tool[7].height_mm",
                                                  "step[1].place.first",
                                                  "step[1].place.face",
                                                  "step[1].place.shift_mm",
                                                  "press.title",
                                                  "run.friction",
                                                  "run.layers",
                                                  "run.elements_per_thickness"}));
    CHECK_FALSE(job.blank_length.has_value());
    CHECK(job.bend_lines.empty());
    CHECK(job.rolling == Rolling::lengthwise);
    CHECK_FALSE(job.part.angle_tolerance);
    CHECK_FALSE(job.part.length_tolerance);
    CHECK_FALSE(job.part.bends[0].tolerance.either_way);
    CHECK(shape_of<tool::VeePunch>(job, 0).height == 60.0);
    CHECK(shape_of<tool::VeePunch>(job, 0).shank_width == 12.0);
    CHECK(shape_of<tool::VeeDie>(job, 1).width == 10.0 + 4.0 * 1.5 + 16.0);
    CHECK(shape_of<tool::OpenDie>(job, 2).depth == 16.0);
    CHECK(shape_of<tool::OffsetPunch>(job, 3).root_radius == 0.5);
    CHECK(shape_of<tool::OffsetPunch>(job, 3).land == 15.0);
    CHECK(shape_of<tool::OffsetPunch>(job, 3).height == 50.0);
    CHECK(shape_of<tool::OffsetDie>(job, 4).height == 40.0);
    CHECK(shape_of<tool::ChannelPunch>(job, 5).side_relief == 0.0);
    CHECK(shape_of<tool::ChannelPunch>(job, 5).shank_width == 30.0);
    CHECK(shape_of<tool::ChannelPunch>(job, 5).shank == tool::Shank::middle);
    CHECK(shape_of<tool::ChannelDie>(job, 6).floor_crown == 0.0);
    CHECK(shape_of<tool::ChannelDie>(job, 6).width == 62.4);
    CHECK(shape_of<tool::ChannelDie>(job, 6).height == 35.0);
    CHECK(job.steps[0].first == First::left);
    CHECK(job.press->title.empty());
    CHECK(job.run.friction == 0.1);
    CHECK(job.run.layers == 11);
    CHECK(job.run.elements_per_thickness == 8.0);
}

TEST_CASE("tables may be left out as a whole, and written in one line") {
    const std::string small = R"(format = 1
title = "Angle"
strip = { material = "dc01", thickness_mm = 1, width_mm = 20 }
[part]
path = [ { flat_mm = 20 }, { bend_deg = -90, inside_radius_mm = 0 }, { flat_mm = 20 } ]
[[tool]]
name = "punch"
kind = "vee-punch"
angle_deg = 85
nose_radius_mm = 8
[[tool]]
name = "die"
kind = "vee-die"
faces = [ { angle_deg = 90, opening_mm = 40 } ]
[[step]]
name = "only"
bends = ["bend 1"]
punch = "punch"
die = "die"
place = { face = "down" }
)";
    const Case job = case_of(small);
    CHECK(job.material.name == "dc01");
    CHECK(job.steps[0].stop == StopKind::drawing_angle);
    CHECK(job.steps[0].face == Face::down);
    CHECK(job.steps[0].die_face == 1);
    CHECK_FALSE(job.press.has_value());
    CHECK(shape_of<tool::VeePunch>(job, 0).shank_width >= 16.0);  // room for the nose
}

TEST_CASE("a card may be a file beside the case") {
    const OwnFolder folder;
    folder.write("mine.toml", voce_card);
    std::string text =
        whole_case.substr(0, whole_case.find("[material]")) + whole_case.substr(whole_case.find("[part]"));
    text = replaced(text, "[strip]\n", "[strip]\nmaterial = \"mine.toml\"\n");
    const Case job = read_case(folder.write("case.toml", text));
    CHECK(job.material.name == "mine.toml");
    CHECK(std::get<material::Voce>(job.material.hardening).Y == 200.0);

    // what is wrong in the card is told of the card
    const auto card = folder.write("mine.toml", replaced(voce_card, "Y_MPa = 200", "Y_MPa = -200"));
    try {
        read_case(folder.path() / "case.toml");
        FAIL("a card with a yield stress below 0 was taken");
    } catch (const CaseError& error) {
        CHECK(error.file == card.string());
        CHECK(error.key == "hardening.Y_MPa");
        CHECK(error.line == line_of(voce_card, "Y_MPa"));
    }
}

TEST_CASE("pads, clamps, wiping and flat tools are read as they stand") {
    const Case job = case_of(pressed_case);
    CHECK(job.run.gravity);
    CHECK_FALSE(case_of(whole_case).run.gravity);
    const auto& flat = shape_of<FlatPunch>(job, 3);
    CHECK(flat.block.width == 30.0);
    CHECK(flat.block.left_radius == 1.0);
    CHECK(flat.block.right_radius == 1.0);
    CHECK(flat.block.height == 35.0);
    CHECK(shape_of<FlatDie>(job, 4).block.left_radius == 1.5);
    CHECK(shape_of<WipingPunch>(job, 7).clearance == 1.1);
    const auto& edge = shape_of<WipingDie>(job, 8);
    CHECK(edge.block.left_radius == 0.0);
    CHECK(edge.block.right_radius == 2.5);
    // Two springs, 80000 4^4 / (8 20^3 6) N/mm each, on 20 mm of strip.
    const auto& pad = shape_of<Pad>(job, 9);
    CHECK(near(pad.spring.rate, 2.0 * 80000.0 * 256.0 / (8.0 * 8000.0 * 6.0) / 20.0));
    CHECK(near(pad.spring.preload, 300.0 / 20.0));
    CHECK(pad.spring.solid == 9.0);
    const auto& clamp = shape_of<Clamp>(job, 10);
    REQUIRE(clamp.spring);
    CHECK(clamp.spring->preload == 150.0);
    CHECK(clamp.spring->rate == 5.0);
    CHECK(clamp.spring->solid == 30.0);
}

TEST_CASE("steps with pads, clamps and gaps are read as they stand") {
    const Case job = case_of(pressed_case);
    REQUIRE(job.steps.size() == 4);
    CHECK(job.steps[0].bends == job.steps[1].bends);
    CHECK(job.steps[1].stop == StopKind::gap);
    CHECK(job.steps[1].stop_value == 0.2);
    CHECK_FALSE(job.steps[1].pad);
    REQUIRE(job.steps[2].pad);
    CHECK(job.tools[*job.steps[2].pad].name == "ejector");
    REQUIRE(job.steps[3].clamp);
    CHECK(job.tools[*job.steps[3].clamp].name == "holder");
    CHECK(job.steps[3].clamp_on == ClampOn::ram);
    const Case by_name = case_of(
        replaced(pressed_case, "[step.clamp]\ntool = \"holder\"\non = \"ram\"", "clamp = \"holder\""));
    CHECK(by_name.steps[3].clamp_on == ClampOn::frame);
}
