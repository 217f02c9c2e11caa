#include "scenes/files/case/read_part.h"

#include <algorithm>
#include <cmath>

#include "scenes/files/case/strict_table.h"
#include "sim/plan/bend_allowance.h"

namespace overbend::files {

namespace {

constexpr Range flat_length = above_to(0.0, 5000.0);  // mm
constexpr Range bend_radius = from_to(0.0, 1000.0);   // mm
constexpr Range bend_angle = from_to(-180.0, 180.0);  // deg; 180 is a hem
constexpr Range cutout_size = above_to(0.0, 5000.0);  // mm
constexpr Range place_on_blank = from_to(0.0, 1e5);   // mm; the strip's own limits are checked afterwards
constexpr std::size_t most_bends = 200;

const Words flat_keys = {"flat_mm", "outside_mm"};
const Words bend_keys = {"bend_deg", "inside_radius_mm", "name"};
const Words path_keys = {"flat_mm", "outside_mm", "bend_deg", "inside_radius_mm", "name"};
const char* const path_remedy = "a path is flat, bend, flat, ... and ends with a flat";

std::vector<StrictTable> path_entries(const StrictTable& table) {
    const std::string right =
        "give a list such as [ { flat_mm = 20 }, { bend_deg = 90, inside_radius_mm = 1 }, { flat_mm = 20 } ]";
    if (!table.has("path")) table.complain_missing("path", right);
    std::vector<StrictTable> entries = table.tables("path", path_keys);
    if (entries.size() < 3) table.complain("path", "there is no bend between two flats in it", right);
    if (entries.size() > 2 * most_bends + 1) {
        table.complain("path", std::to_string(entries.size()) + " entries are too many",
                       "give at most " + std::to_string(most_bends) + " bends");
    }
    return entries;
}

Bend read_bend(const StrictTable& entry, std::size_t number) {
    Bend bend;
    bend.angle = entry.angle("bend_deg", bend_angle);
    if (bend.angle == 0.0) {
        entry.complain("bend_deg", "an angle of 0 is not a bend",
                       "give an angle other than 0, or one longer flat");
    }
    bend.inside_radius = entry.number("inside_radius_mm", bend_radius);
    bend.name = entry.text_or("name", "bend " + std::to_string(number));
    return bend;
}

void check_new(const StrictTable& entry, const Bend& bend, const std::vector<Bend>& before) {
    const bool taken =
        std::any_of(before.begin(), before.end(), [&](const Bend& other) { return other.name == bend.name; });
    if (!taken) return;
    entry.complain("name", "there is a bend " + in_quotes(bend.name) + " before this one",
                   "give each bend a different name (a third bend without a name is \"bend 3\")");
}

// Flats and bends by turns; says which of the two must stand here.
void check_turn(StrictTable& entry, bool flat_is_next) {
    const char* const flat_key = entry.has("outside_mm") ? "outside_mm" : "flat_mm";
    const bool flat = entry.has(flat_key), bend = entry.has("bend_deg");
    if (flat && bend) entry.complain("", "it is both a flat and a bend", "give them one after the other");
    if (flat_is_next && bend) entry.complain("bend_deg", "a flat belongs here, not a bend", path_remedy);
    if (!flat_is_next && flat) entry.complain(flat_key, "a bend belongs here, not a flat", path_remedy);
    entry.expect(flat_is_next ? flat_keys : bend_keys);
}

// A flat's length, or the leg measured on the outside that is turned into one when its bends are known.
double read_length(const StrictTable& entry) {
    const bool flat = entry.has("flat_mm"), outside = entry.has("outside_mm");
    if (flat == outside)
        entry.complain("", flat ? "it has two lengths" : "it has no length",
                       "give either flat_mm, between the bends' tangent points, or outside_mm, the leg as "
                       "DIN 6935 measures it");
    return entry.number(flat ? "flat_mm" : "outside_mm", flat_length);
}

// What the bends beside a leg leave of it as a flat.
void turn_legs_into_flats(const std::vector<StrictTable>& entries, Part& part, double thickness) {
    const auto corner = [&](std::size_t bend) {
        const Bend& b = part.bends[bend];
        return plan::outer_corner(b.inside_radius, thickness, std::abs(b.angle));
    };
    for (std::size_t i = 0; i < part.flats.size(); ++i) {
        const StrictTable& entry = entries[2 * i];
        if (!entry.has("outside_mm")) continue;
        double taken = 0.0;
        if (i > 0) taken += corner(i - 1);
        if (i < part.bends.size()) taken += corner(i);
        if (part.flats[i] <= taken)
            entry.complain("outside_mm",
                           "a leg of " + written(part.flats[i]) +
                               " mm is too short: the bends beside it need " + worked_out(taken) +
                               " mm of it",
                           "give more than " + worked_out(taken) + " mm, or smaller radii");
        part.flats[i] -= taken;
    }
}

// The longest the blank can be: no bend takes more than its mid-line.
double longest_blank(const Part& part, double thickness) {
    double length = 0.0;
    for (const double flat : part.flats) length += flat;
    for (const Bend& bend : part.bends)
        length += std::abs(bend.angle) * (bend.inside_radius + 0.5 * thickness);
    return length;
}

void check_inside(const StrictTable& table, const char* key, double middle, double size, double limit,
                  const char* limit_word) {
    const double low = middle - 0.5 * size, high = middle + 0.5 * size;
    if (low >= 0.0 && high <= limit) return;
    const std::string right = size <= limit ? "give a centre from " + worked_out(0.5 * size) + " to " +
                                                  worked_out(limit - 0.5 * size) + " (mm)"
                                            : "give a smaller one";
    table.complain(key,
                   "it reaches from " + worked_out(low) + " to " + worked_out(high) + " mm, beyond the " +
                       limit_word + " of " + worked_out(limit) + " mm",
                   right);
}

void read_size(const StrictTable& table, Cutout& cutout) {
    const bool hole = table.has("hole_mm"), slot = table.has("slot_mm");
    if (hole == slot) {
        table.complain("", hole ? "it is both a hole and a slot" : "it is neither a hole nor a slot",
                       "give either hole_mm = diameter or slot_mm = [length, width]");
    }
    if (hole) {
        cutout.width = cutout.length = table.number("hole_mm", cutout_size);
        return;
    }
    const std::vector<double> sizes = table.numbers("slot_mm", cutout_size);
    if (sizes.size() != 2 || sizes[0] < sizes[1]) {
        table.complain("slot_mm",
                       sizes.size() == 2 ? "the slot is wider than it is long" : "a slot has two sizes",
                       "give slot_mm = [length, width], its length along the strip");
    }
    cutout.length = sizes[0];
    cutout.width = sizes[1];
}

}  // namespace

const std::vector<std::string>& part_keys() {
    static const Words keys = {"path", "angle_tolerance_deg", "cutouts"};
    return keys;
}

Part read_part(const StrictTable& table, double thickness) {
    Part part;
    // ISO 2768-1 class m, shorter leg to 10 mm: from memory.
    part.angle_tolerance = table.angle_or("angle_tolerance_deg", 1.0, above_to(0.0, 45.0));
    std::vector<StrictTable> entries = path_entries(table);
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const bool flat_is_next = i % 2 == 0;
        check_turn(entries[i], flat_is_next);
        if (flat_is_next) {
            part.flats.push_back(read_length(entries[i]));
            continue;
        }
        const Bend bend = read_bend(entries[i], part.bends.size() + 1);
        check_new(entries[i], bend, part.bends);
        part.bends.push_back(bend);
    }
    if (part.flats.size() == part.bends.size())
        entries.back().complain("", "the path ends with a bend", path_remedy);
    turn_legs_into_flats(entries, part, thickness);
    return part;
}

std::vector<Cutout> read_cutouts(const StrictTable& table, const Part& part, double thickness, double width,
                                 std::optional<double> blank_length) {
    const double length = blank_length.value_or(longest_blank(part, thickness));
    std::vector<Cutout> cutouts;
    for (const StrictTable& entry : table.tables("cutouts", {"at_mm", "across_mm", "hole_mm", "slot_mm"})) {
        Cutout cutout;
        cutout.at = entry.number("at_mm", place_on_blank);
        cutout.across = entry.number("across_mm", place_on_blank);
        read_size(entry, cutout);
        check_inside(entry, "at_mm", cutout.at, cutout.length, length, "blank's length");
        check_inside(entry, "across_mm", cutout.across, cutout.width, width, "strip's width");
        cutouts.push_back(cutout);
    }
    return cutouts;
}

void complain_of_bend(const StrictTable& table, std::size_t bend, const std::string& wrong,
                      const std::string& right) {
    table.tables("path", path_keys).at(2 * bend + 1).complain("", wrong, right);
}

}  // namespace overbend::files
