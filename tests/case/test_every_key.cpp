// Every key of a case file and of a card: misspelt, of the wrong kind, out of range, missing. Each must be
// told with its line, its key and what would be right.

#include <doctest/doctest.h>

#include <map>
#include <set>

#include "scenes/files/case/key_reference.h"
#include "tests/case/case_mistakes.h"
#include "tests/case/every_key.h"
#include "tests/case/whole_cases.h"

using namespace overbend::tests;
using overbend::files::CaseError;

namespace {

struct Document {
    const char* name;
    const std::string& text;
    Reader read;
};

const std::vector<Document> documents = {{"case", whole_case, as_case},
                                         {"pressed case", pressed_case, as_case},
                                         {"swift", swift_card, as_card},
                                         {"hollomon", hollomon_card, as_card},
                                         {"voce", voce_card, as_card},
                                         {"linear", linear_card, as_card},
                                         {"table", table_card, as_card},
                                         {"racked case", racked_case, as_case},
                                         {"rack", rack_file, as_rack},
                                         {"hard steel", hard_steel, as_steel},
                                         {"soft steel", soft_steel, as_steel},
                                         {"press", press_card, as_press},
                                         {"drawn case", drawn_case, as_drawn_case}};

// What may be left out, as plain paths. All else is required.
const std::set<std::string> optional_keys = {
    "strip.bend_lines_mm", "strip.thickness_tolerance_mm", "strip.rolling", "part.angle_tolerance_deg",
    "part.length_tolerance_mm", "part.radius_tolerance_mm", "part.profile_tolerance_mm",
    "part.path.tolerance_mm", "part.path.tolerance_deg", "part.path.radius_tolerance_mm", "part.path.name",
    "tool.height_mm", "tool.shank_width_mm", "tool.faces.shoulder_radius_mm", "tool.faces.bottom_radius_mm",
    "tool.root_radius_mm", "tool.land_mm", "tool.side_relief_deg", "tool.shank", "tool.floor_crown_mm",
    "tool.points.radius_mm", "tool.points.bulge", "tool.layer", "tool.gap_mm", "tool.origin_mm",
    "tool.turn_deg", "step.die.face", "step.place.face", "step.place.first", "step.place.shift_mm",
    "step.pad", "step.clamp.on", "tool.spring.travel_mm", "tool.spring.count", "tool.spring.preload_N",
    "tool.spring.preload_N_per_mm", "tool.spring.rate_N_per_mm2", "run.gravity", "press.title",
    "press.gauge.draws_back_mm", "tool.relief.root_radius_mm", "handling.stroke_s", "handling.turn_s",
    "handling.flip_s", "handling.tool_change_s", "handling.gauge_change_s", "handling.slide_s",
    "run.friction", "run.layers", "run.elements_per_thickness", "press", "tool.steel", "tool.rating_kN_per_m",
    "tool.length_mm", "tool.price",
    // of a press, in a case and as a card
    "press.daylight_mm", "press.throat_mm", "press.line_load_kN_per_m", "press.off_centre_kN_m",
    "press.energy_J", "press.eccentric.rated_angle_deg", "press.price_per_h", "press.idle_kW",
    "press.speed.slow_above_mm", "press.speed.dwell_s", "press.gauge.reach_mm", "press.gauge.nearest_mm",
    "daylight_mm", "throat_mm", "line_load_kN_per_m", "off_centre_kN_m", "energy_J",
    "eccentric.rated_angle_deg", "price_per_h", "idle_kW", "speed.slow_above_mm", "speed.dwell_s",
    "gauge.reach_mm", "gauge.nearest_mm", "gauge.draws_back_mm",
    // of a tool's steel
    "price_per_kg", "hardened", "sources.density_kg_m3", "sources.safety_tension",
    // of a card
    "tensile_strength_MPa", "elongation_percent", "strength_range_percent", "reduction_of_area_percent",
    "cutting_mm2_per_s", "r_value", "metal", "hardness", "sources.youngs_modulus_MPa", "sources.hardening"};

// Required for one kind of tool or entry, optional for another; the places that are optional.
const std::set<std::string> optional_places = {
    "tool[3].depth_mm",         "tool[2].width_mm",          "tool[3].width_mm",
    "tool[7].width_mm",         "tool[4].corner_radius_mm",  "tool[5].corner_radius_mm",
    "tool[8].corner_radius_mm", "tool[10].corner_radius_mm", "tool[11].corner_radius_mm",
    "tool[12].width_mm",        "tool[13].width_mm"};

// Names that others rely on: without them, another key is to blame.
const std::set<std::string> relied_upon = {"rack",
                                           "hardness_HRC",
                                           "tool[1].file",
                                           "strip.blank_length_mm",
                                           "part.path[2].name",
                                           "part.path[4].name",
                                           "part.path[6].name",
                                           "part.path[8].name",
                                           "part.path[10].name"};

// One of several keys must stand in these tables: without it the table is to blame.
const std::set<std::string> one_of_several = {
    "part.path.flat_mm",  "part.path.outside_mm", "part.cutouts.hole_mm", "part.cutouts.slot_mm",
    "step.stop.free_deg", "step.stop.force_kN",   "step.stop.travel_mm",  "step.stop.gap_mm"};

// Values that cannot be, by the key alone.
const std::map<std::string, std::vector<std::string>> bad_values = {
    {"price", {"-1", "1e12"}},
    {"price_per_h", {"-1", "1e12"}},
    {"idle_kW", {"-1", "1e12"}},
    {"strip_price_per_kg", {"-1", "1e12"}},
    {"scrap_price_per_kg", {"-1", "1e12"}},
    {"gap_mm", {"-1", "1e12"}},
    {"pierce_s", {"-1", "1e12"}},
    {"cutting_price_per_h", {"-1", "1e12"}},
    {"lay_in_s", {"-1", "1e12"}},
    {"press_price_per_h", {"-1", "1e12"}},
    {"worker_price_per_h", {"-1", "1e12"}},
    {"tool_steel_price_per_kg", {"-1", "1e12"}},
    {"block_allowance_mm", {"-1", "1e12"}},
    {"fitting_h", {"-1", "1e12"}},
    {"milling_price_per_h", {"-1", "1e12"}},
    {"erosion_price_per_h", {"-1", "1e12"}},
    {"fitting_price_per_h", {"-1", "1e12"}},
    {"hardening_price_per_kg", {"-1", "1e12"}},
    {"deburring_s", {"-1", "1e12"}},
    {"programming_s", {"-1", "1e12"}},
    {"first_article_s", {"-1", "1e12"}},
    {"design_h", {"-1", "1e12"}},
    {"cam_h", {"-1", "1e12"}},
    {"design_price_per_h", {"-1", "1e12"}},
    {"grinding_h", {"-1", "1e12"}},
    {"grinding_price_per_h", {"-1", "1e12"}},
    {"hardening_least_price", {"-1", "1e12"}},
    {"spring_price", {"-1", "1e12"}},
    {"spring_steel_price_per_kg", {"-1", "1e12"}},
    {"regrind_strokes", {"-1", "1e12"}},
    {"regrind_h", {"-1", "1e12"}},
    {"cleaning_price", {"-1", "1e12"}},
    {"packaging_price", {"-1", "1e12"}},
    {"overhead_percent", {"-1", "1e12"}},
    {"cutting_most_mm_per_s", {"0", "-1", "1e12"}},
    {"rejected_percent", {"-1", "91"}},
    {"trial_parts", {"-1", "1.5"}},
    {"regrinds", {"-1", "1.5"}},
    {"inspection_s", {"-1", "1e12"}},
    {"storage_price_per_month", {"-1", "1e12"}},
    {"storage_months", {"-1", "1e12"}},
    {"energy_price_per_kWh", {"-1", "1e12"}},
    {"slow_above_mm", {"-1", "1e12"}},
    {"dwell_s", {"-1", "1e12"}},
    {"price_per_kg", {"-1", "1e12"}},
    {"rating_kN_per_m", {"0", "-1", "1e12"}},
    {"throat_mm", {"0", "-1", "1e12"}},
    {"line_load_kN_per_m", {"0", "-1", "1e12"}},
    {"off_centre_kN_m", {"0", "-1", "1e12"}},
    {"rated_angle_deg", {"0", "-30", "91"}},
    {"energy_J", {"0", "-1", "1e12"}},
    {"approach_mm_per_s", {"0", "-1", "1e12"}},
    {"pressing_mm_per_s", {"0", "-1", "1e12"}},
    {"return_mm_per_s", {"0", "-1", "1e12"}},
    {"cutting_mm_per_s", {"0", "-1", "1e12"}},
    {"milling_cm3_per_min", {"0", "-1", "1e12"}},
    {"erosion_mm2_per_min", {"0", "-1", "1e12"}},
    {"reach_mm", {"0", "-1", "1e12"}},
    {"daylight_mm", {"-1", "79", "2e4"}},
    {"nearest_mm", {"-1", "221"}},
    {"money", {"\"\""}},
    {"batch", {"0", "1.5", "1e12"}},
    {"tool_batches", {"0", "1.5"}},
    {"end_scrap_percent", {"-1", "91"}},
    {"inspected_percent", {"-1", "101"}},
    {"efficiency_percent", {"0", "101"}},
    {"steel", {"\"1.237\"", "\"steels/none.toml\"", "\"\""}},
    {"press", {"\"bench-6\"", "\"presses/none.toml\"", "\"\""}},
    {"hardness_HRC", {"19", "68"}},
    {"hardness_HV", {"79", "1001"}},
    {"compressive_yield_MPa", {"49", "1e5"}},
    {"bending_strength_MPa", {"49", "1e5"}},
    {"safety_tension", {"0.9", "21"}},
    {"safety_compression", {"0.9", "21"}},
    {"hardened", {"\"yes\"", "1"}},
    {"format", {"2", "0", "-1", "1.5"}},
    {"title", {"\"\"", "\"a\\nb\""}},
    {"source", {"\"\""}},
    {"name", {"\"\"", "\"\\u0007\""}},
    {"thickness_mm", {"-1", "0", "0.049", "20.1", "1e300"}},
    {"width_mm", {"-1", "0", "6000"}},
    {"blank_length_mm", {"0", "-3", "1e6"}},
    {"length_mm", {"0", "-5", "1e4"}},
    {"draws_back_mm", {"-1", "1e4"}},
    {"stroke_s", {"-1", "1e6"}},
    {"turn_s", {"-0.1"}},
    {"flip_s", {"-2"}},
    {"tool_change_s", {"-5", "2e5"}},
    {"gauge_change_s", {"-1"}},
    {"slide_s", {"-1"}},
    {"rolling", {"\"across\"", "\"\""}},
    {"metal", {"\"stel\"", "\"aluminium\"", "\"\""}},
    {"hardness", {"\"half\"", "\"\""}},
    {"bend_lines_mm", {"[]", "[25.5]", "[25.5, 47.5, 55, 82, 112.5, 120]"}},
    {"youngs_modulus_MPa", {"206", "0", "-206000", "1e9"}},
    {"poisson", {"-0.1", "0.5", "0.6"}},
    {"density_kg_m3", {"0", "7.85", "-1", "1e6"}},
    {"tensile_strength_MPa", {"0", "-1", "1e5"}},
    {"elongation_percent", {"0", "-1", "101"}},
    {"law", {"\"swft\"", "\"\""}},
    {"K_MPa", {"0", "-520", "1e5"}},
    {"Y_MPa", {"0", "-1", "1e5"}},
    {"Q_MPa", {"-1", "1e5"}},
    {"H_MPa", {"-1", "1e7"}},
    {"b", {"0", "-1", "1e5"}},
    {"e0", {"0", "-0.1", "1.1"}},
    {"n", {"0", "1", "-0.2", "2"}},
    {"C_MPa", {"-1", "1e7"}},
    {"gamma", {"-1", "1e6"}},
    {"to_MPa", {"0", "1e9"}},
    {"rate", {"0", "1e6"}},
    {"angle_tolerance_deg", {"0", "-1", "46"}},
    {"thickness_tolerance_mm", {"0", "-1", "6"}},
    {"strength_range_percent", {"-1", "51"}},
    {"length_tolerance_mm", {"0", "-1", "101"}},
    {"radius_tolerance_mm", {"0", "-1", "1001", "\"refrence\""}},
    {"profile_tolerance_mm", {"0", "-1", "101"}},
    {"tolerance_mm", {"0", "-1", "101", "\"none\""}},
    {"tolerance_deg", {"0", "-1", "46", "\"none\""}},
    {"flat_mm", {"0", "-24", "5001"}},
    {"outside_mm", {"0", "-10", "5001", "1.1"}},
    {"bend_deg", {"0", "180.1", "-180.1", "200"}},
    {"inside_radius_mm", {"-0.1", "1001"}},
    {"at_mm", {"-1", "1", "1e6", "149"}},
    {"across_mm", {"-1", "1", "1e6", "19.9"}},
    {"hole_mm", {"0", "-5", "1e6"}},
    {"slot_mm", {"[]", "[8]", "[8, 4, 2]"}},
    {"kind", {"\"vee-punh\"", "\"\""}},
    {"angle_deg", {"0", "180", "-60"}},
    {"nose_radius_mm", {"-1", "3000"}},
    {"shoulder_radius_mm", {"-1", "3000"}},
    {"groove_radius_mm", {"0", "-1", "3000"}},
    {"bottom_radius_mm", {"-1", "3000"}},
    {"root_radius_mm", {"-1", "3000"}},
    {"corner_radius_mm", {"-1", "3000"}},
    {"radius_mm", {"-1", "3000"}},
    {"height_mm", {"0", "-1", "3000"}},
    {"shank_width_mm", {"0", "-1", "3000"}},
    {"foot_height_mm", {"0", "-1", "3000"}},
    {"opening_mm", {"0", "-1", "3000"}},
    {"opening_at_corners_mm", {"0", "-1", "3000"}},
    {"depth_mm", {"0", "-1", "3000"}},
    {"offset_mm", {"0", "-1", "3000"}},
    {"clearance_mm", {"0", "-1", "3000"}},
    {"land_mm", {"0", "-1", "3000"}},
    {"floor_crown_mm", {"-1", "3000"}},
    {"side_relief_deg", {"-1", "30"}},
    {"shank", {"\"centre\"", "\"\""}},
    {"x_mm", {"-3000", "3000"}},
    {"y_mm", {"-3000", "3000"}},
    {"bulge", {"-2000", "2000"}},
    {"punch", {"\"wege\"", "\"two-way\"", "\"\""}},
    {"die", {"\"lowr\"", "\"upper\"", "\"\""}},
    {"tool", {"\"two-wy\"", "\"wedge\"", "\"\""}},
    {"face", {"0", "3", "1.5", "\"sideways\""}},
    {"first", {"\"rigth\"", "\"\""}},
    {"shift_mm", {"-2000", "2000"}},
    {"free_deg", {"0", "180", "-90"}},
    {"travel_mm", {"0", "-1", "2000"}},
    {"force_kN", {"0", "-1", "1e6"}},
    {"stroke_mm", {"0", "-1", "6000"}},
    {"r_value", {"0.05", "11"}},
    {"reduction_of_area_percent", {"0", "100", "-1"}},
    {"cutting_mm2_per_s", {"-1", "1e12"}},
    {"friction", {"-0.1", "0.31"}},
    {"layers", {"4", "42", "11.5"}},
    {"elements_per_thickness", {"0.9", "17"}},
    {"material", {"\"dc0\"", "\"\""}},
    {"gravity", {"\"yes\"", "1"}},
    {"edge_radius_mm", {"0", "-1", "3000"}},
    {"wire_mm", {"0", "-1", "101"}},
    {"coil_mm", {"0", "-1", "501"}},
    {"turns", {"0", "-1", "201"}},
    {"shear_modulus_MPa", {"999", "-1", "2e6"}},
    {"count", {"0", "1.5", "1001"}},
    {"preload_N", {"-1", "1e9"}},
    {"preload_N_per_mm", {"-1", "1e6"}},
    {"rate_N_per_mm2", {"-1", "1e6"}},
    {"pad", {"\"ejectr\"", "\"wedge\"", "\"\""}},
    {"on", {"\"bed\"", "\"\""}},
    {"side", {"\"top\"", "\"\""}},
    {"from_mm", {"0", "-1", "3000"}},
    {"to_mm", {"0", "-1", "3000"}},
    {"set_back_mm", {"-3000", "3000"}},
    {"neck_mm", {"0", "-1", "3000"}},
    {"file", {"\"none.dxf\"", "\"\""}},
    {"layer", {"\"\"", "\"a\\nb\""}},
    {"origin_mm", {"[]", "[5]", "[1, 2, 3]"}},
    {"turn_deg", {"-361", "361"}},
    {"rack", {"\"small-pres\"", "\"tools/none.toml\"", "\"\""}},
    {"gap_mm", {"-1", "101"}},
    {"stroke_s", {"-1", "2e5"}},
    {"turn_s", {"-1", "2e5"}},
    {"flip_s", {"-1", "2e5"}},
    {"tool_change_s", {"-1", "2e5"}},
    {"gauge_change_s", {"-1", "2e5"}},
    {"slide_s", {"-1", "2e5"}}};

bool is_number(const std::string& value) {
    return value.find_first_not_of("-+.0123456789e") == std::string::npos;
}

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

void check_mistake(const std::string& text, const Reader& read, int line, const std::string& key,
                   const std::string& remedy) {
    const std::optional<CaseError> error = mistake_in(text, read);
    REQUIRE(error);
    CAPTURE(std::string(error->what()));
    CHECK(error->line == line);
    CHECK(error->key == key);
    CHECK(has(error->right, remedy));
}

}  // namespace

TEST_CASE("the files that are spoilt below are right as they stand") {
    for (const Document& document : documents) {
        CAPTURE(std::string(document.name));
        const std::optional<CaseError> error = mistake_in(document.text, document.read);
        CHECK_MESSAGE(!error, (error ? error->what() : ""));
    }
}

TEST_CASE("every key that the readers know stands in one of them") {
    std::set<std::string> standing;
    for (const Document& document : documents) {
        for (const KeyLine& key : every_key(document.text)) standing.insert(key.key);
    }
    for (const char* table :
         {"path",         "cutouts",    "faces", "points",   "hardening", "backstress", "modulus_drop",
          "sources",      "place",      "stop",  "spring",   "clamp",     "tool",       "relief",
          "punch_holder", "die_holder", "ram",   "bed",      "gauge",     "speed",      "eccentric",
          "strip",        "part",       "step",  "handling", "cost",      "run"}) {
        standing.insert(table);  // these stand there as tables
    }
    for (const auto& table : overbend::files::key_reference())
        for (const auto& key : table.keys) {
            CAPTURE(table.header);
            CHECK_MESSAGE(standing.count(key.name) == 1, key.name);
        }
}

TEST_CASE("a misspelt key is named, and so is the one that was meant") {
    for (const Document& document : documents) {
        for (const KeyLine& key : every_key(document.text)) {
            CAPTURE(std::string(document.name));
            CAPTURE(key.path());
            KeyLine misspelt = key;
            misspelt.key = key.key + "q";
            const std::string spoilt = with_line(document.text, key.line, misspelt.key + " = " + key.value);
            check_mistake(spoilt, document.read, key.line, misspelt.path(),
                          "the nearest is " + key.key + ";");
        }
    }
}

TEST_CASE("a value of the wrong kind is named with its key") {
    for (const Document& document : documents) {
        for (const KeyLine& key : every_key(document.text)) {
            CAPTURE(std::string(document.name));
            CAPTURE(key.path());
            for (const char* wrong : {"1979-05-27", "true", "[[]]", "{}"}) {
                CAPTURE(std::string(wrong));
                if (key.value == wrong) continue;  // where true is right
                const std::string spoilt = with_line(document.text, key.line, key.key + " = " + wrong);
                const std::optional<CaseError> error = mistake_in(spoilt, document.read);
                REQUIRE(error);
                CAPTURE(std::string(error->what()));
                CHECK(error->line == key.line);
                CHECK(error->key.rfind(key.path(), 0) == 0);  // or an element of it
            }
        }
    }
}

TEST_CASE("no number is taken that is not one") {
    for (const Document& document : documents) {
        for (const KeyLine& key : every_key(document.text)) {
            if (!is_number(key.value)) continue;
            CAPTURE(std::string(document.name));
            CAPTURE(key.path());
            for (const char* wrong : {"nan", "-nan", "inf", "-inf", "\"1\""}) {
                CAPTURE(std::string(wrong));
                const std::string spoilt = with_line(document.text, key.line, key.key + " = " + wrong);
                check_mistake(spoilt, document.read, key.line, key.path(), "give");
            }
        }
    }
}

TEST_CASE("a value out of its range is named with its key and the range") {
    std::set<std::string> tried;
    for (const Document& document : documents) {
        for (const KeyLine& key : every_key(document.text)) {
            const auto bad = bad_values.find(key.key);
            if (bad == bad_values.end()) continue;
            tried.insert(key.key);
            for (const std::string& value : bad->second) {
                CAPTURE(std::string(document.name));
                CAPTURE(key.path());
                CAPTURE(value);
                const std::string spoilt = with_line(document.text, key.line, key.key + " = " + value);
                check_mistake(spoilt, document.read, key.line, key.path(), "");
            }
        }
    }
    CHECK(tried.size() == bad_values.size());
}

TEST_CASE("every key with a number or a word has been tried out of range") {
    for (const Document& document : documents) {
        for (const KeyLine& key : every_key(document.text)) {
            const bool list = key.value[0] == '[';
            const bool source = key.table == "sources";
            if (!list && !source) CHECK_MESSAGE(bad_values.count(key.key) == 1, key.path());
        }
    }
}

TEST_CASE("a key that must be there is missed, on the line of its table") {
    for (const Document& document : documents) {
        for (const KeyLine& key : every_key(document.text)) {
            CAPTURE(std::string(document.name));
            CAPTURE(key.path());
            const std::string spoilt = without_line(document.text, key.line);
            const std::optional<CaseError> error = mistake_in(spoilt, document.read);
            if (relied_upon.count(key.path())) {
                CHECK(error);
                continue;
            }
            if (optional_keys.count(key.plain_path()) || key.table == "cost") {
                CHECK_MESSAGE(!error, (error ? error->what() : ""));
                continue;
            }
            if (optional_places.count(key.path())) {
                CHECK_MESSAGE(!error, (error ? error->what() : ""));
                continue;
            }
            REQUIRE(error);
            CAPTURE(std::string(error->what()));
            CHECK(error->line == key.table_line);
            std::string missed = one_of_several.count(key.plain_path()) ? key.table : key.path();
            const std::size_t corners = missed.find("_at_corners");  // the other way to give an opening
            if (corners != std::string::npos) missed.erase(corners, 11);
            CHECK(error->key == missed);
            CHECK(has(error->right, "give"));
        }
    }
}
