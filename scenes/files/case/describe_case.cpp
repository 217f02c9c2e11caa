#include "scenes/files/case/describe.h"
#include "sim/units.h"

namespace overbend::files {

namespace {

constexpr Range flat_length = above_to(0.0, 5000.0);  // mm
constexpr Range place_on_blank = from_to(0.0, 1e5);   // mm; the strip's own limits are checked afterwards
constexpr Range cutout_size = above_to(0.0, 5000.0);  // mm
constexpr Range seconds = from_to(0.0, 1e5);

void tolerance(Fields& f, const Key& key, const Range& range, Tolerance& t) {
    f.number_or_word_if(key, range, "reference", t.either_way, t.reference, "the part's");
}

}  // namespace

void describe(Fields& f, TopTable& t) {
    f.whole({"format", "1", "File format; 1 is the only one"}, 1, 1, t.format);
    f.text({"title", "\"Hook for a cable\"", "Name of the part"}, t.title);
    f.text_or({"rack", "\"small-press\"",
               "A rack of tools, by its name or as a .toml file; its tools come before the case's own"},
              t.rack, "");
    f.elsewhere({"strip", "", "The strip"}, true);
    f.elsewhere({"material", "", "The strip's material, if given here"}, false);
    f.elsewhere({"part", "", "The drawing"}, true);
    f.elsewhere({"tool", "", "A tool; any number of them"}, false);
    f.elsewhere({"step", "", "A stroke; any number of them, in their order"}, false);
    f.elsewhere({"press", "\"bench-60\"", "The press, as a table, or by its name, or as a .toml file"},
                false);
    f.elsewhere({"handling", "", "Handling times"}, false);
    f.elsewhere({"cost", "",
                 "Prices and rates, in any currency; the defaults are the middles of common ranges for a "
                 "labour rate of 45 "
                 "per hour"},
                false);
    f.elsewhere({"run", "", "How it is computed"}, false);
}

void describe(Fields& f, StripTable& t) {
    f.text_or({"material", "\"dc01\"", "The strip's card, by its name or as a .toml file"}, t.material, "",
              "the table [material]");
    f.number({"thickness_mm", "1.0", "Thickness of the strip"}, from_to(0.05, 20.0), t.thickness);
    f.number_if({"thickness_tolerance_mm", "0.04", "What the thickness may be off, plus or minus"},
                above_to(0.0, 5.0), t.thickness_tolerance, "5 per cent of it (common practice)");
    f.number({"width_mm", "20.0", "Width of the strip, along the bend lines"}, from_to(0.5, 5000.0), t.width);
    f.number_if({"blank_length_mm", "120.0", "Length of the blank"}, above_to(0.0, 1e5), t.blank_length,
                "calculated");
    f.numbers_if({"bend_lines_mm", "[30.5, 62.0]",
                  "One for each bend, from the blank's left end; with them, blank_length_mm is required"},
                 above_to(0.0, 1e5), 0, t.bend_lines, "calculated");
    f.word_or({"rolling", "\"crosswise\"", "Direction of the strip's length against the rolling direction"},
              {"lengthwise", "crosswise"}, t.rolling, Rolling::lengthwise);
}

void describe(Fields& f, PartTable& t) {
    f.number_if({"length_tolerance_mm", "0.2", "Tolerance of each leg, measured outside, plus or minus"},
                above_to(0.0, 100.0), t.length_tolerance, "ISO 2768-m");
    f.number_if({"angle_tolerance_deg", "0.5", "Tolerance of each bend angle, plus or minus"},
                above_to(0.0, 45.0), t.angle_tolerance, "ISO 2768-m");
    f.number_if({"radius_tolerance_mm", "0.3", "Tolerance of each inside radius, plus or minus"},
                above_to(0.0, 1000.0), t.radius_tolerance, "0.2 mm or 15 per cent");
    f.number_if({"profile_tolerance_mm", "0.3",
                 "How far the finished profile may lie from the drawing's when it is laid over it"},
                above_to(0.0, 100.0), t.profile_tolerance, "what the others allow there");
    f.tables(
        {"path", "[ { flat_mm = 20.0 }, { bend_deg = 90.0, inside_radius_mm = 1.0 }, { flat_mm = 20.0 } ]",
         "Flats and bends in turn, from the left; it begins and ends with a flat"},
        t.path);
    f.tables_if({"cutouts", "[ { at_mm = 12.0, across_mm = 10.0, hole_mm = 5.0 } ]", "Holes and slots"},
                t.cutouts);
}

void describe(Fields& f, PathEntry& t) {
    f.number_if({"flat_mm", "20.0", "A flat: its length between the bends' tangent points"}, flat_length,
                t.flat, "outside_mm");
    f.number_if(
        {"outside_mm", "22.5",
         "A flat, by its leg measured on the outside, as in DIN 6935: to the outer tangent of a bend of "
         "90 degrees and more, to the outer corner of a smaller one"},
        flat_length, t.outside, "flat_mm");
    f.number_if(
        {"bend_deg", "90.0", "A bend: its angle, not 0; positive turns the right-hand side up, 180 is a hem"},
        from_to(-180.0, 180.0), t.angle, "a flat");
    f.number_if({"inside_radius_mm", "1.0", "Of a bend, as drawn; required there"}, from_to(0.0, 1000.0),
                t.inside_radius, "a flat");
    f.text_or({"name", "\"lip\"", "Name of the bend, used in steps"}, t.name, "",
              "\"bend 1\", \"bend 2\" ...");
    tolerance(f, {"tolerance_mm", "0.1", "Of a flat: tolerance of its leg; \"reference\" is not judged"},
              above_to(0.0, 100.0), t.leg_tolerance);
    tolerance(f, {"tolerance_deg", "0.5", "Of a bend: tolerance of its angle; \"reference\" is not judged"},
              above_to(0.0, 45.0), t.angle_tolerance);
    tolerance(f,
              {"radius_tolerance_mm", "0.1",
               "Of a bend: tolerance of its inside radius; \"reference\" is not judged"},
              above_to(0.0, 1000.0), t.radius_tolerance);
}

void describe(Fields& f, CutoutEntry& t) {
    f.number({"at_mm", "12.0", "Its middle, from the blank's left end"}, place_on_blank, t.at);
    f.number({"across_mm", "10.0", "Its middle, from the strip's lower edge"}, place_on_blank, t.across);
    f.number_if({"hole_mm", "5.0", "Diameter of a hole"}, cutout_size, t.hole, "slot_mm");
    f.numbers_if({"slot_mm", "[8.0, 4.0]", "Length, along the strip, and width, across it, of a slot"},
                 cutout_size, 0, t.slot, "hole_mm");
}

void describe(Fields& f, StepTable& t) {
    f.text({"name", "\"lip\"", "Name of the step; unique"}, t.name);
    f.texts({"bends", "[\"lip\"]", "The bends that it makes, one or two, by their names"}, t.bends);
    f.text({"punch", "\"punch 60\"", "Its punch, by its name"}, t.punch);
    f.name_or_table(
        {"die", "{ tool = \"die 8\", face = 1 }", "Its die, by its name, or with the face that is up"},
        t.die);
    f.text_or({"pad", "\"ejector\"", "A pad in a channel die"}, t.pad, "");
    f.name_or_table_if({"clamp", "{ tool = \"holder\", on = \"frame\" }",
                        "The clamp of a wiping die, which holds the strip left of the edge"},
                       t.clamp);
    f.table_or({"place", "{ face = \"down\", first = \"right\" }", "How the blank is placed"}, t.place,
               "as drawn");
    f.table_or({"stop", "{ free_deg = 90.0 }", "When the ram stops: give one of its keys"}, t.stop,
               "the angle of the drawing; for a hem, its gap");
}

void describe(Fields& f, DieName& t) {
    f.text({"tool", "\"die 8\"", "Name of the die"}, t.tool);
    f.whole_if({"face", "2", "The face that is up"}, 1, 2, t.face, "1");
}

void describe(Fields& f, ClampName& t) {
    f.text({"tool", "\"holder\"", "Name of the clamp"}, t.tool);
    f.word_or({"on", "\"ram\"", "Where its spring is fixed"}, {"frame", "ram"}, t.on, ClampOn::frame);
}

void describe(Fields& f, PlaceTable& t) {
    f.word_or({"face", "\"down\"", "The blank's face that is up"}, {"up", "down"}, t.face, Face::up);
    f.word_or({"first", "\"right\"", "The blank's end that lies to the left"}, {"left", "right"}, t.first,
              First::left);
    f.number_or({"shift_mm", "0.5", "Distance of the bend line to the right of the punch's axis"},
                from_to(-1000.0, 1000.0), t.shift, {0.0});
}

void describe(Fields& f, StopTable& t) {
    f.number_if({"free_deg", "88.0", "Bend angle after release, in either direction"},
                above_below(0.0, 180.0), t.free_angle, "one of the others");
    f.number_if({"travel_mm", "6.5", "Travel from the first touch"}, above_to(0.0, 1000.0), t.travel,
                "one of the others");
    f.number_if({"force_kN", "12.0", "Force on the strip's whole width"}, above_to(0.0, 1e5), t.force,
                "one of the others");
    f.number_if({"gap_mm", "0.4", "Gap between the inner faces of a hem, closed by flat tools"},
                from_to(0.0, 100.0), t.gap, "one of the others");
}

std::optional<double>& StopTable::of(StopKind kind) {
    if (kind == StopKind::free_angle) return free_angle;
    if (kind == StopKind::travel) return travel;
    return kind == StopKind::force ? force : gap;
}

void describe(Fields& f, Handling& t) {
    const Handling usual;
    const auto number = numbers_as_in(f, t, usual);
    number({"stroke_s", "5.0", "One stroke: place, press, release"}, seconds, &Handling::stroke);
    number({"turn_s", "2.0", "Turning the strip end for end"}, seconds, &Handling::turn);
    number({"flip_s", "2.0", "Turning the strip over"}, seconds, &Handling::flip);
    number({"tool_change_s", "180.0", "Changing a punch or die, or turning a block over"}, seconds,
           &Handling::tool_change);
    number({"gauge_change_s", "20.0", "Setting the gauge"}, seconds, &Handling::gauge_change);
    number({"slide_s", "4.0", "Sliding the strip in or off along the bend line"}, seconds, &Handling::slide);
}

void describe(Fields& f, RunOptions& t) {
    const RunOptions usual;
    const auto number = numbers_as_in(f, t, usual);
    number({"friction", "0.12", "Coulomb friction of the strip on all tools"}, from_to(0.0, 0.3),
           &RunOptions::friction);
    f.whole_or({"layers", "15", "Layers through the thickness"}, 5, 41, t.layers, usual.layers);
    f.number_or({"elements_per_thickness", "8.0", "Elements in the bends, for each thickness of length"},
                from_to(1.0, 16.0), t.elements_per_thickness, {usual.elements_per_thickness});
    f.truth_or_false({"gravity", "true", "Includes the weight of the strip"}, t.gravity);
}

}  // namespace overbend::files
