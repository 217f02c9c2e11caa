#include "scenes/files/case/describe.h"

namespace overbend::files {

namespace {

constexpr Range block_size = above_to(0.0, 2000.0);  // mm, of what stands about the tools
constexpr Range length = above_to(0.0, 5000.0);      // mm
constexpr Range speed = above_to(0.0, 1e4);          // mm/s
constexpr Range strength = from_to(50.0, 1e4);       // MPa
constexpr Range safety = from_to(1.0, 20.0);

}  // namespace

// ---- presses

namespace {

void describe_machine(Fields& f, Press& t) {
    const char* const block = "{ width_mm = 60.0, height_mm = 80.0 }";
    f.number({"force_kN", "60.0", "Rated force"}, above_to(0.0, 1e5), t.force);
    f.number({"stroke_mm", "80.0", "Stroke of the ram"}, above_to(0.0, 5000.0), t.stroke);
    f.table_if({"punch_holder", block, "Punch holder"}, t.punch_holder);
    f.table_if({"die_holder", block, "Die holder"}, t.die_holder);
    f.table_if({"ram", block, "The ram, above the punch's holder"}, t.ram);
    f.table_if({"bed", block, "The bed, below the die's holder"}, t.bed);
    f.table_if({"gauge", "{ height_mm = 6.0, length_mm = 30.0 }",
                "Back gauge: the stop that the strip is pushed against, to the right of the punch"},
               t.gauge);
    f.number_if({"daylight_mm", "200.0", "Between bed and ram when the ram is up; not less than the stroke"},
                from_to(t.stroke, 10000.0), t.daylight);
    f.number_if({"throat_mm", "120.0", "From the punch's axis to the frame"}, length, t.throat);
    f.number_if({"line_load_kN_per_m", "400.0", "Rated load per metre of tool"}, above_to(0.0, 1e5),
                t.line_load);
    f.number_if({"off_centre_kN_m", "2.0", "Rated off-centre moment of the ram's guides"}, above_to(0.0, 1e5),
                t.off_centre);
    f.number_if({"energy_J", "900.0", "Energy available per stroke"}, above_to(0.0, 1e7), t.energy);
    f.table_if({"eccentric", "{ rated_angle_deg = 30.0 }",
                "The drive of an eccentric press: its force falls with the height above the bottom"},
               t.eccentric, "the rated force holds over the whole stroke");
    f.table_if({"speed", "{ approach_mm_per_s = 60.0, pressing_mm_per_s = 8.0, return_mm_per_s = 60.0 }",
                "Speeds of the ram"},
               t.speeds, "not known");
    f.number_if({"price_per_h", "18.0", "Hourly rate of the press"}, from_to(0.0, 1e6), t.price_per_hour);
    f.number_if({"idle_kW", "0.8", "Power while it is manned"}, from_to(0.0, 1e4), t.idle_power);
}

}  // namespace

void describe(Fields& f, Press& t) {
    f.text_or({"title", "\"Arbor press, 10 kN\"", "Name"}, t.title, "");
    describe_machine(f, t);
}

void describe(Fields& f, PressBlock& t) {
    f.number({"width_mm", "60.0", "Its width, centred on the punch's axis"}, block_size, t.width);
    f.number({"height_mm", "80.0", "Its height"}, block_size, t.height);
}

void describe(Fields& f, Gauge& t) {
    f.number({"height_mm", "6.0", "Its height, from one thickness below the die's face up"}, block_size,
             t.height);
    f.number({"length_mm", "30.0", "Its length, away from the strip"}, block_size, t.length);
    f.number_or({"draws_back_mm", "60.0", "Distance it retracts after the punch has touched the strip"},
                from_to(0.0, 2000.0), t.draws_back, {Gauge{}.draws_back});
    f.number_if({"reach_mm", "300.0", "Furthest from the punch's axis"}, length, t.reach, "not checked");
    f.number_if({"nearest_mm", "8.0", "Nearest to the punch's axis"},
                from_to(0.0, t.reach.value_or(0.0) > 0.0 ? *t.reach : 5000.0), t.nearest, "not checked");
}

void describe(Fields& f, shop::Eccentric& t) {
    f.number_or({"rated_angle_deg", "30.0",
                 "Angle of the crank before bottom dead centre from which the rated force holds; 30: common "
                 "practice"},
                from_to(1.0, 90.0), t.rated_angle, {shop::Eccentric{}.rated_angle});
}

void describe(Fields& f, shop::RamSpeeds& t) {
    const shop::RamSpeeds usual;
    f.number({"approach_mm_per_s", "60.0", "Down to the strip"}, speed, t.approach);
    f.number({"pressing_mm_per_s", "8.0", "While it presses"}, speed, t.pressing);
    f.number({"return_mm_per_s", "60.0", "Back up"}, speed, t.going_back);
    const auto number = numbers_as_in(f, t, usual);
    number({"slow_above_mm", "5.0", "How far above the strip it slows down"}, from_to(0.0, 1000.0),
           &shop::RamSpeeds::slow_above);
    number({"dwell_s", "0.2", "Time at the lowest point"}, from_to(0.0, 60.0), &shop::RamSpeeds::dwell);
}

void describe(Fields& f, PressCard& t) {
    f.text({"title", "\"Arbor press, 10 kN\"", "Name"}, t.press.title);
    f.text({"source", "\"Maker's data sheet\"", "Where the numbers come from"}, t.source);
    describe_machine(f, t.press);
}

// ---- tool steels

void describe(Fields& f, SteelTable& t) {
    shop::ToolSteel& s = t.steel;
    f.text({"title", "\"X153CrMoV12, hardened to 60 HRC\"", "Title"}, s.title);
    f.text({"source", "\"Maker's data sheet\"", "Where the numbers come from"}, s.source);
    f.number_if({"hardness_HRC", "60.0", "Hardness at which the numbers hold, Rockwell"}, from_to(20.0, 67.0),
                t.rockwell, "hardness_HV");
    f.number_if({"hardness_HV", "300.0", "Hardness at which the numbers hold, Vickers"},
                from_to(80.0, 1000.0), t.vickers, "hardness_HRC");
    f.number({"youngs_modulus_MPa", "210000.0", "Young's modulus"}, from_to(1e4, 1e6), s.youngs_modulus);
    f.number({"poisson", "0.3", "Poisson's ratio"}, from_below(0.0, 0.5), s.poisson);
    f.number({"density_kg_m3", "7850.0", "Density"}, from_to(1000.0, 25e3), s.density);
    f.number({"compressive_yield_MPa", "2000.0", "Yield in compression, 0.2 per cent"}, strength,
             s.compressive_yield);
    f.number({"bending_strength_MPa", "3000.0",
              "Bending strength: fracture for a hardened steel, yield for a soft one"},
             strength, s.bending_strength);
    f.number({"safety_tension", "2.0", "Factor of safety in bending"}, safety, s.safety_tension);
    f.number({"safety_compression", "1.5", "Factor of safety in compression"}, safety, s.safety_compression);
    f.number_or({"price_per_kg", "9.0", "Its price"}, from_to(0.0, 1e6), s.price, {0.0, "the case's own"});
    bool hardened = s.hardening == shop::Hardening::through;
    f.truth_or_false({"hardened", "true", "Hardened and tempered after cutting"}, hardened);
    s.hardening = hardened ? shop::Hardening::through : shop::Hardening::none;
    f.sources_if({"sources", "{ density_kg_m3 = \"EN ISO 4957\" }", "Sources of single numbers"}, t.sources);
}

}  // namespace overbend::files
