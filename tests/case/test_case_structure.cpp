// Mistakes that concern more than one key: what follows what, what names what, what goes with what.

#include <doctest/doctest.h>

#include "tests/case/case_mistakes.h"
#include "tests/case/whole_cases.h"

using namespace overbend::tests;
using overbend::files::CaseError;

namespace {

// The whole case with one text in it replaced is wrong: on the line of `at` (in the spoilt text, once there),
// at this key, and the message holds these words.
struct Mistake {
    const char* what;
    std::string from, to;
    std::string at;
    std::string key;
    std::string wrong, right;
};

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

void check(const std::string& text, const Mistake& mistake) {
    CAPTURE(std::string(mistake.what));
    const std::string spoilt = replaced(text, mistake.from, mistake.to);
    const std::optional<CaseError> error = mistake_in(spoilt, as_case);
    REQUIRE(error);
    CAPTURE(std::string(error->what()));
    CHECK(error->line == line_of(spoilt, mistake.at));
    CHECK(error->key == mistake.key);
    CHECK(has(error->wrong, mistake.wrong));
    CHECK(has(error->right, mistake.right));
}

// Without what stands from the first of one text to the first of another, which stays.
std::string cut(const std::string& text, const std::string& from, const std::string& to) {
    const std::size_t start = text.find(from), end = text.find(to);
    REQUIRE(start < end);
    REQUIRE(end != std::string::npos);
    return text.substr(0, start) + text.substr(end);
}

}  // namespace

TEST_CASE("whole tables that are missing") {
    const auto check_missing = [](const std::string& text, const std::string& key, const std::string& right) {
        const std::optional<CaseError> error = mistake_in(text, as_case);
        CAPTURE(key);
        REQUIRE(error);
        CAPTURE(std::string(error->what()));
        CHECK(error->line == 1);
        CHECK(error->key == key);
        CHECK(has(error->right, right));
    };
    check_missing(cut(whole_case, "[strip]", "[material]"), "strip", "thickness_mm");
    check_missing(cut(whole_case, "[part]", "[[tool]]"), "part", "path");
    check_missing(cut(whole_case, "[[tool]]", "[[step]]"), "tool", "each as a [[tool]]");
    check_missing(cut(whole_case, "[[step]]", "[press]"), "step", "give at least one [[step]]");
    check_missing("", "format", "format = 1");
    CHECK_FALSE(mistake_in(cut(whole_case, "[press]", "[run]"), as_case));
    CHECK_FALSE(mistake_in(whole_case.substr(0, whole_case.find("[run]")), as_case));
}

TEST_CASE("lists that are missing or empty") {
    const std::string no_step = cut(whole_case, "[[step]]\nname = \"lip\"", "[press]");
    check(no_step, {"empty steps", "format = 1\n", "format = 1\nstep = []\n", "step = []", "step", "no steps",
                    "give at least one [[step]]"});
    const std::string no_path = cut(whole_case, "[[part.path]]", "[[part.cutouts]]");
    check(no_path,
          {"no path", "title = \"Clip", "title = \"A clip", "[part]", "part.path", "missing", "flat_mm"});
    const std::string no_faces = cut(whole_case, "[[tool.faces]]", "[[tool]]\nname = \"slot\"");
    check(no_faces, {"no faces", "title = \"Clip", "title = \"A clip", "[[tool]]\nname = \"two-way\"",
                     "tool[2].faces", "missing", "one or two"});
    check(no_faces, {"empty faces", "kind = \"vee-die\"", "kind = \"vee-die\"\nfaces = []", "faces = []",
                     "tool[2].faces", "0 grooves", "one or two"});
    const std::string no_points = cut(whole_case, "[[tool.points]]", "[[step]]");
    check(no_points, {"no points", "title = \"Clip", "title = \"A clip", "[[tool]]\nname = \"block\"",
                      "tool[8].points", "missing", "x_mm"});
    check(no_points, {"empty points", "kind = \"outline\"", "kind = \"outline\"\npoints = []",
                      "[[tool]]\nname = \"block\"", "tool[8]", "0 corners", "three"});
}

TEST_CASE("the material stands in one place") {
    const std::string none = cut(whole_case, "[material]", "[part]");
    check(none,
          {"none", "title = \"Clip", "title = \"A clip", "[strip]", "strip.material", "missing", "dc01"});
    check(none, {"unknown card", "[strip]", "[strip]\nmaterial = \"dc1\"", "material = \"dc1\"",
                 "strip.material", "no material card \"dc1\"", "the nearest is dc01;"});
    check(none, {"no such file", "[strip]", "[strip]\nmaterial = \"no.toml\"", "no.toml", "strip.material",
                 "no such file", "path"});
    check(none, {"not a table", "title = \"Clip", "material = \"dc01\"\ntitle = \"Clip",
                 "material = ", "material", "text", "table"});
    check(whole_case, {"two", "[strip]", "[strip]\nmaterial = \"dc01\"", "[material]\n", "material", "twice",
                       "remove one of them"});
}

// The bends of the whole case take 1.5 to 4 mm of blank each, along the mid-line.
TEST_CASE("bend lines lie on the blank, in order, with room for the bends") {
    const std::string lines = "bend_lines_mm = [25.5, 47.5, 55, 82, 112.5]";
    const std::vector<Mistake> mistakes = {
        {"no length", "blank_length_mm = 150\n", "", lines, "strip.bend_lines_mm", "without a blank length",
         "blank_length_mm"},
        {"too few", lines, "bend_lines_mm = [25.5, 47.5]", "bend_lines_mm", "strip.bend_lines_mm",
         "2 bend lines for 5 bends", "each bend"},
        {"not rising", lines, "bend_lines_mm = [25.5, 55, 47.5, 82, 112.5]", "bend_lines_mm",
         "strip.bend_lines_mm[3]", "beside the line before", "more than 56.0472 mm"},
        {"two at once", lines, "bend_lines_mm = [25.5, 47.5, 48.5, 82, 112.5]", "bend_lines_mm",
         "strip.bend_lines_mm[3]", "\"bend 3\" leaves no room", "more than 48.5472 mm"},
        {"at the left end", lines, "bend_lines_mm = [1.5, 47.5, 55, 82, 112.5]", "bend_lines_mm",
         "strip.bend_lines_mm[1]", "left end", "more than 1.5708 mm"},
        {"at the right end", lines, "bend_lines_mm = [25.5, 47.5, 55, 82, 149]", "bend_lines_mm",
         "strip.bend_lines_mm[5]", "before the blank's end at 150 mm", "less than 148.037 mm"},
        {"beyond", lines, "bend_lines_mm = [25.5, 47.5, 55, 82, 151]", "bend_lines_mm",
         "strip.bend_lines_mm[5]", "before the blank's end", "less than"},
        {"negative", lines, "bend_lines_mm = [-25.5, 47.5, 55, 82, 112.5]", "bend_lines_mm",
         "strip.bend_lines_mm[1]", "", ""}};
    for (const Mistake& mistake : mistakes) check(whole_case, mistake);
    CHECK(case_of(whole_case).bend_lines == std::vector<double>{25.5, 47.5, 55.0, 82.0, 112.5});
    CHECK(case_of(replaced(whole_case, lines + "\n", "")).bend_lines.empty());
}

TEST_CASE("a path goes flat, bend, flat") {
    const std::vector<Mistake> mistakes = {
        {"bend first", "[[part.path]]\nflat_mm = 24\ntolerance_mm = 0.15\n", "",
         "bend_deg = 90\ninside_radius_mm = 1.5", "part.path[1].bend_deg", "a flat belongs here",
         "flat, bend, flat"},
        {"bend last", "[[part.path]]\nflat_mm = 15\n", "", "[[part.path]]\nbend_deg = 90.0", "part.path[10]",
         "ends with a bend", "flat, bend, flat"},
        {"two flats", "flat_mm = 24", "flat_mm = 4\n[[part.path]]\nflat_mm = 20.5", "flat_mm = 20.5",
         "part.path[2].flat_mm", "a bend belongs here", "flat, bend, flat"},
        {"two bends", "[[part.path]]\nflat_mm = 6.5\n", "", "bend_deg = -40", "part.path[5].bend_deg",
         "a flat belongs here", "flat, bend, flat"},
        {"both at once", "flat_mm = 6.5", "flat_mm = 6.5\nbend_deg = 10", "[[part.path]]\nflat_mm = 6.5",
         "part.path[5]", "both a flat and a bend", "one after the other"},
        {"a name on a flat", "flat_mm = 6.5", "flat_mm = 6.5\nname = \"web\"", "name = \"web\"",
         "part.path[5].name", "unknown key", "flat_mm"},
        {"a name twice", "name = \"right wall\"", "name = \"lip\"#", "\"lip\"#", "part.path[10].name",
         "\"lip\"", "a different name"},
        {"a name that another has without being given it", "name = \"right wall\"", "name = \"bend 3\"",
         "name = \"bend 3\"", "part.path[10].name", "\"bend 3\"", "a different name"},
        {"a blank shorter than its flats", "blank_length_mm = 150", "blank_length_mm = 116.5",
         "blank_length_mm = 116.5", "strip.blank_length_mm", "116.5", "longer"},
    };
    for (const Mistake& mistake : mistakes) check(whole_case, mistake);
    const std::string only_flat = cut(whole_case, "[[part.path]]\nbend_deg = 90\n", "[[part.cutouts]]");
    check(only_flat,
          {"one flat", "flat_mm = 24", "flat_mm = 25", "[[part.path]]", "part.path", "no bend", "bend_deg"});
}

TEST_CASE("cutouts lie within the strip") {
    const std::vector<Mistake> mistakes = {
        {"a hole and a slot", "hole_mm = 5", "hole_mm = 5\nslot_mm = [5, 3]", "[[part.cutouts]]\nat_mm = 12",
         "part.cutouts[1]", "both a hole and a slot", "either"},
        {"too far left", "at_mm = 12", "at_mm = 2.4", "at_mm = 2.4", "part.cutouts[1].at_mm", "-0.1", "2.5"},
        {"too far right", "at_mm = 60.0", "at_mm = 146.1", "at_mm = 146.1", "part.cutouts[2].at_mm", "150.1",
         "146"},
        {"too low", "across_mm = 9.5", "across_mm = 2.0", "across_mm = 2.0", "part.cutouts[2].across_mm",
         "-0.1", "2.1"},
        {"too high", "across_mm = 10", "across_mm = 18.5", "across_mm = 18.5", "part.cutouts[1].across_mm",
         "21", "18"},
        {"too wide", "hole_mm = 5", "hole_mm = 21", "across_mm = 10", "part.cutouts[1].across_mm", "beyond",
         "smaller"}};
    for (const Mistake& mistake : mistakes) {
        const bool wide = std::string(mistake.what) == "too wide";
        check(wide ? replaced(whole_case, "at_mm = 12", "at_mm = 50") : whole_case, mistake);
    }
    // without a blank length, the drawing's is the limit: 116.5 + 90 deg * (2 + 2.5 + 2.5) + 80 deg * 1.5 =
    // 129.6
    const std::string drawn = cut(whole_case, "blank_length_mm = 150", "\n[material]");
    check(drawn, {"beyond the drawing", "at_mm = 60.0", "at_mm = 127", "at_mm = 127", "part.cutouts[2].at_mm",
                  "beyond", "125.59"});
    CHECK_FALSE(mistake_in(replaced(drawn, "at_mm = 60.0", "at_mm = 125.5"), as_case));
}

TEST_CASE("a tool that cannot be is told on the line of the tool") {
    const std::vector<Mistake> mistakes = {
        {"nose wider than the shank", "nose_radius_mm = 1\nheight_mm = 70",
         "nose_radius_mm = 8\nheight_mm = 70", "[[tool]]\nname = \"wedge\"", "tool[1]", "nose radius",
         "7 mm"},
        {"shoulders that overlap", "shoulder_radius_mm = 1.5", "shoulder_radius_mm = 9",
         "[[tool]]\nname = \"two-way\"", "tool[2]", "shoulder radius", "less than"},
        {"grooves that meet", "height_mm = 50", "height_mm = 10", "[[tool]]\nname = \"two-way\"", "tool[2]",
         "die height", "at least"},
        {"no top face", "depth_mm = 20\nwidth_mm = 40", "depth_mm = 20\nwidth_mm = 9",
         "[[tool]]\nname = \"slot\"", "tool[3]", "die width", "more than 10 mm"},
        {"a foot without a shank", "height_mm = 55", "height_mm = 18", "[[tool]]\nname = \"foot\"", "tool[6]",
         "punch height", "18 mm"},
        {"a crown above the shoulders", "floor_crown_mm = 0.2", "floor_crown_mm = 12.5",
         "[[tool]]\nname = \"channel\"", "tool[7]", "floor crown", ""},
        {"an outline that crosses itself", "x_mm = 10\ny_mm = 20", "x_mm = -30\ny_mm = 10",
         "[[tool]]\nname = \"block\"", "tool[8]", "", ""},
        {"a name twice", "name = \"slot\"", "name = \"wedge\" #", "name = \"wedge\" #", "tool[3].name",
         "\"wedge\"", "a different name"},
        {"a key of another kind", "kind = \"open-die\"", "kind = \"open-die\"\nland_mm = 1.75",
         "land_mm = 1.75", "tool[3].land_mm", "unknown key",
         "name, kind, shoulder_radius_mm, opening_mm, opening_at_corners_mm, depth_mm, width_mm"},
        {"an opening twice", "opening_mm = 8\nshoulder_radius_mm = 1\n",
         "opening_mm = 8\nopening_at_corners_mm = 6\nshoulder_radius_mm = 1\n", "opening_at_corners_mm",
         "tool[3].opening_at_corners_mm", "beside opening_mm", "instead"},
        {"three grooves", "[[tool.faces]]\nangle_deg = 86",
         "[[tool.faces]]\nangle_deg = 90\nopening_mm = 6\n"
         "[[tool.faces]]\nangle_deg = 86",
         "[[tool.faces]]\nangle_deg = 90", "tool[2].faces", "3 grooves", "one or two"}};
    for (const Mistake& mistake : mistakes) check(whole_case, mistake);
}

TEST_CASE("steps name bends, and every bend once") {
    const std::vector<Mistake> mistakes = {
        {"unknown bend", "[\"lip\"]", "[\"lpi\"]", "[\"lpi\"]", "step[1].bends[1]", "\"lpi\"",
         "the nearest is lip;"},
        {"no bend", "[\"lip\"]", "[]", "bends = []", "step[1].bends", "empty", "list"},
        {"not a list", "[\"lip\"]", "\"lip\"", "bends = \"lip\"", "step[1].bends", "text", "list"},
        {"twice in a step", "[\"left wall\", \"right wall\"]", "[\"left wall\", \"left wall\"]",
         "[\"left wall\", \"left wall\"]", "step[3].bends[2]", "named twice", "once in a step"},
        {"in two steps that cannot both make it", "[\"left wall\", \"right wall\"]",
         "[\"left wall\", \"lip\"]", "[\"left wall\", \"lip\"]", "step[3].bends", "between them", "adjacent"},
        {"three at once", "[\"left wall\", \"right wall\"]", "[\"left wall\", \"right wall\", \"x\"]",
         "[\"left wall\", \"right wall\", \"x\"]", "step[3].bends[3]", "\"x\"", "bends here: lip, bend 2"},
        {"a name twice", "name = \"offset\"", "name = \"lip\" #", "name = \"lip\" #", "step[2].name",
         "\"lip\"", "a different name"}};
    for (const Mistake& mistake : mistakes) check(whole_case, mistake);
    const std::string two_steps =
        cut(whole_case, "[[step]]\nname = \"offset\"", "[[step]]\nname = \"channel\"");
    check(two_steps, {"bends that no step makes", "title = \"Clip", "title = \"A clip",
                      "[[part.path]]\nbend_deg = 40", "part.path[4]", "no step makes", "\"bend 2\""});
}

TEST_CASE("a bend that is made to the drawing's angle is not pressed again, one with another stop may be") {
    const std::string again = R"([[step]]
name = "lip again"
bends = ["lip"]
punch = "wedge"
die = "slot"

[[step]]
name = "offset")";
    const std::string twice = replaced(whole_case, "[[step]]\nname = \"offset\"", again);
    CHECK_FALSE(mistake_in(twice, as_case));
    check(twice,
          {"made already", "[step.stop]\nfree_deg = 90\n", "", "bends = [\"lip\"]\npunch = \"wedge\"\ndie",
           "step[2].bends[1]", "\"lip\" is already bent", "a stop"});
}

TEST_CASE("steps name tools that do the work") {
    const std::vector<Mistake> mistakes = {
        {"unknown punch", "punch = \"wedge\"", "punch = \"wegde\"", "punch = \"wegde\"", "step[1].punch",
         "\"wegde\"", "the nearest is wedge;"},
        {"a die for a punch", "punch = \"wedge\"", "punch = \"slot\"", "punch = \"slot\"", "step[1].punch",
         "a die", "punch"},
        {"a punch for a die", "die = \"lower\"", "die = \"upper\"", "die = \"upper\"", "step[2].die",
         "a punch", "die"},
        {"a face that is not there", "tool = \"two-way\"\nface = 2", "tool = \"slot\"\nface = 2", "face = 2",
         "step[1].die.face", "no face 2", "face = 1"},
        {"neither name nor table", "die = \"lower\"", "die = 3", "die = 3", "step[2].die", "neither", "name"},
        {"tools of different strokes", "die = \"lower\"", "die = \"channel\" #", "die = \"channel\" #",
         "step[2].die", "channel-die", "an offset-punch with an offset-die"},
        {"two bends in a V stroke", "punch = \"foot\"\ndie = \"channel\"",
         "punch = \"wedge\"\ndie = \"slot\"", "[\"left wall\", \"right wall\"]", "step[3].bends", "one bend",
         "one bend"},
        {"one bend in an offset stroke", "[\"bend 3\", \"bend 2\"]", "[\"bend 3\"]", "[\"bend 3\"]",
         "step[2].bends", "two bends", "opposite"},
        {"like bends in an offset stroke", "bend_deg = -40", "bend_deg = 40.0", "[\"bend 3\", \"bend 2\"]",
         "step[2].bends", "same direction", "opposite"},
        {"opposite bends in a channel stroke", "bend_deg = 90.0", "bend_deg = -90.0",
         "[\"left wall\", \"right wall\"]", "step[3].bends", "opposite direction", "same direction"},
        {"a bend between", "[\"bend 3\", \"bend 2\"]", "[\"bend 2\", \"right wall\"]",
         "[\"bend 2\", \"right wall\"]", "step[2].bends", "between", "adjacent"},
        {"a V stroke the wrong way up", "face = \"up\"", "face = \"down\"", "[step.place]", "step[1].place",
         "\"lip\" the wrong way", "face = \"up\""},
        {"an offset stroke the wrong way round", "die = \"lower\"",
         "die = \"lower\"\nplace = { first = \"right\" }", "place = {", "step[2].place",
         "\"bend 3\" the wrong way", "end for end"},
        {"a channel stroke the wrong way up", "die = \"channel\"",
         "die = \"channel\"\nplace = { face = \"down\" }", "place = {", "step[3].place", "wrong way",
         "face = \"up\""},
        {"no stop in stop", "[step.stop]\nfree_deg = 90", "[step.stop]", "[step.stop]\n\n", "step[1].stop",
         "when", "free_deg"},
        {"two stops", "free_deg = 90", "free_deg = 90\ntravel_mm = 3", "[step.stop]\nfree_deg = 90",
         "step[1].stop", "more than one", "one of"}};
    for (const Mistake& mistake : mistakes) check(whole_case, mistake);
    const std::string placed = replaced(whole_case, "die = \"lower\"",
                                        "die = \"lower\"\nplace = { first = \"right\", "
                                        "face = \"down\" }");
    CHECK_FALSE(mistake_in(placed, as_case));
}

TEST_CASE("tools that do not suit one another or the strip are told on the line of the step") {
    const std::vector<Mistake> mistakes = {
        {"a punch wider than the groove", "angle_deg = 60\n", "angle_deg = 63\n", "[[step]]\nname = \"lip\"",
         "step[1]", "punch angle", "62"},
        {"a nose too wide for the groove", "opening_mm = 8\n\n", "opening_mm = 3.9\n\n",
         "[[step]]\nname = \"lip\"", "step[1]", "nose radius", ""},
        {"offsets that differ", "offset_mm = 5\nangle_deg = 40\nnose",
         "offset_mm = 5.5\nangle_deg = 40\nnose", "[[step]]\nname = \"offset\"", "step[2]", "offset", "same"},
        {"too little clearance", "clearance_mm = 1.1", "clearance_mm = 0.9", "[[step]]\nname = \"offset\"",
         "step[2]", "clearance", "1 mm"},
        {"a foot too wide", "width_mm = 30", "width_mm = 30.6", "[[step]]\nname = \"channel\"", "step[3]",
         "punch width", "30.4 mm"},
        {"a strip too thick", "thickness_mm = 1\n", "thickness_mm = 1.15\n", "[[step]]\nname = \"offset\"",
         "step[2]", "clearance", "1.15 mm"}};
    for (const Mistake& mistake : mistakes) check(whole_case, mistake);
}

TEST_CASE("an outline works as a punch and as a die, with any other tool") {
    std::string text = replaced(whole_case, "die = \"lower\"", "die = \"block\"");
    text = replaced(text, "punch = \"foot\"\ndie = \"channel\"", "punch = \"block\"\ndie = \"block\"");
    CHECK_FALSE(mistake_in(text, as_case));
}

TEST_CASE("hems, pads and clamps stand where they can do their work") {
    const std::vector<Mistake> mistakes = {
        {"a hem that nobody lays",
         "name = \"flat\"\nbends = [\"edge\"]\npunch = \"flat above\"\ndie = \"flat below\"\n"
         "[step.stop]\ngap_mm = 0.2",
         "name = \"sharper\"\nbends = [\"edge\"]\npunch = \"wedge\"\ndie = \"slot\"\n"
         "[step.stop]\nfree_deg = 155",
         "[[part.path]]\nbend_deg = 180", "part.path[2]", "no step closes the hem", "flat-die"},
        {"a hem bent by wedges alone", "[step.stop]\nfree_deg = 150\n", "", "[[step]]\nname = \"sharp\"",
         "step[1].stop", "180 degrees", "free_deg = 150"},
        {"no hem", "bend_deg = 180", "bend_deg = 170", "bends = [\"edge\"]\npunch = \"flat", "step[2].bends",
         "less than 180", "bend_deg = 180"},
        {"a hem to an angle", "gap_mm = 0.2", "free_deg = 175", "[step.stop]\nfree_deg = 175", "step[2].stop",
         "not closed to an angle", "gap_mm"},
        {"a gap without a hem", "free_deg = 150", "gap_mm = 1", "[step.stop]\ngap_mm = 1\n", "step[1].stop",
         "flat tools", "free_deg"},
        {"a pad in a V die", "die = \"slot\"", "die = \"slot\"\npad = \"ejector\"",
         "pad = \"ejector\"\n[step", "step[1].pad", "cannot use a pad", "channel-die"},
        {"a pad too wide", "width_mm = 21.6", "width_mm = 22.1", "pad = \"ejector\"", "step[3].pad", "22.1",
         "width_mm"},
        {"a pad too high", "height_mm = 10", "height_mm = 20", "pad = \"ejector\"", "step[3].pad", "20",
         "deeper"},
        {"a clamp for a pad", "pad = \"ejector\"", "pad = \"holder\"", "pad = \"holder\"", "step[3].pad",
         "clamp", "name a pad"},
        {"a clamp in a channel", "pad = \"ejector\"", "clamp = \"holder\"", "clamp = \"holder\"",
         "step[3].clamp", "cannot use a clamp", "wiping-die"},
        {"wiping without a clamp", "[step.clamp]\ntool = \"holder\"\non = \"ram\"", "",
         "[[step]]\nname = \"lug\"", "step[4].clamp", "missing", "name a clamp"},
        {"a firm clamp on the ram",
         "[tool.spring]\npreload_N_per_mm = 150\nrate_N_per_mm2 = 5\ntravel_mm = 30\n", "", "[step.clamp]",
         "step[4].clamp", "on the ram needs a spring", "spring"},
        {"wiping too tight", "clearance_mm = 1.1", "clearance_mm = 0.9", "punch = \"wiper\"", "step[4].punch",
         "0.9", "clearance_mm = 1"},
        {"wiping upwards", "bend_deg = -85", "bend_deg = 85", "[[step]]\nname = \"lug\"", "step[4].place",
         "wrong way", "down"},
        {"no pad without a spring", "kind = \"clamp\"", "kind = \"pad\"\n# ", "tool = \"holder\"",
         "step[4].clamp.tool", "of the kind pad", "name a clamp"},
        {"a spring of two sorts", "preload_N = 300", "rate_N_per_mm2 = 3", "rate_N_per_mm2 = 3",
         "tool[10].spring.rate_N_per_mm2", "unknown key", "wire_mm"},
        {"a spring that does nothing", "preload_N_per_mm = 150\nrate_N_per_mm2 = 5",
         "preload_N_per_mm = 0\nrate_N_per_mm2 = 0", "[tool.spring]\npreload_N_per_mm = 0", "tool[11].spring",
         "neither", "above 0"},
        {"a coil thinner than its wire", "coil_mm = 20", "coil_mm = 3.5", "[tool.spring]\nwire",
         "tool[10].spring", "wire", "mean diameter"}};
    for (const Mistake& mistake : mistakes) check(pressed_case, mistake);
    const std::string not_begun =
        cut(pressed_case, "[[step]]\nname = \"sharp\"", "[[step]]\nname = \"flat\"");
    check(not_begun, {"a hem that is not begun", "title = \"Rail", "title = \"A rail", "bends = [\"edge\"]",
                      "step[1].bends", "cannot start", "earlier step"});
    CHECK_FALSE(mistake_in(replaced(pressed_case, "[step.stop]\ngap_mm = 0.2\n", ""), as_case));
}
