#include "scenes/files/case/read_part.h"

#include <algorithm>
#include <cmath>

#include "scenes/files/case/describe.h"
#include "scenes/files/case/key_list.h"
#include "scenes/files/case/table_reader.h"
#include "scenes/files/reading/most.h"
#include "sim/plan/bend_allowance.h"

namespace overbend::files {

namespace {

const char* const path_remedy = "a path is flat, bend, flat, ... and ends with a flat";

std::vector<StrictTable> path_entries(const StrictTable& table) {
    return table.tables("path", key_names(keys_of<PathEntry>()));
}

void check_length(const StrictTable& table, std::size_t entries) {
    if (entries < 3)
        table.complain("path", "there is no bend between two flats in it",
                       "give a list such as [ { flat_mm = 20 }, { bend_deg = 90, inside_radius_mm = 1 }, "
                       "{ flat_mm = 20 } ]");
    if (entries > 2 * most::bends + 1)
        table.complain("path", std::to_string(entries) + " entries are too many",
                       "give at most " + std::to_string(most::bends) + " bends");
}

// Flats and bends by turns; says which of the two must stand here.
void check_turn(StrictTable entry, bool flat_is_next) {
    const char* const flat_key = entry.has("outside_mm") ? "outside_mm" : "flat_mm";
    const bool flat = entry.has(flat_key), bend = entry.has("bend_deg");
    if (flat && bend) entry.complain("", "it is both a flat and a bend", "give them one after the other");
    if (flat_is_next && bend) entry.complain("bend_deg", "a flat belongs here, not a bend", path_remedy);
    if (!flat_is_next && flat) entry.complain(flat_key, "a bend belongs here, not a flat", path_remedy);
    if (flat_is_next)
        entry.expect({"flat_mm", "outside_mm", "tolerance_mm"});
    else
        entry.expect({"bend_deg", "inside_radius_mm", "name", "tolerance_deg", "radius_tolerance_mm"});
}

Bend bend_of(const StrictTable& entry, const PathEntry& given, const std::vector<Bend>& before) {
    for (const char* key : {"bend_deg", "inside_radius_mm"})
        if (!entry.has(key)) entry.complain_missing(key, "give a number, as every bend has one");
    if (*given.angle == 0.0)
        entry.complain("bend_deg", "an angle of 0 is not a bend",
                       "give an angle other than 0, or one longer flat");
    Bend bend{given.name, *given.angle, *given.inside_radius, given.angle_tolerance, given.radius_tolerance};
    if (bend.name.empty()) bend.name = "bend " + std::to_string(before.size() + 1);
    const bool taken =
        std::any_of(before.begin(), before.end(), [&](const Bend& other) { return other.name == bend.name; });
    if (taken)
        entry.complain("name", "there is a bend " + in_quotes(bend.name) + " before this one",
                       "give each bend a different name (a third bend without a name is \"bend 3\")");
    return bend;
}

// A flat's length, or the leg measured on the outside that is turned into one when its bends are known.
double length_of(const StrictTable& entry, const PathEntry& given) {
    if (given.flat.has_value() == given.outside.has_value())
        entry.complain("", given.flat ? "it has two lengths" : "it has no length",
                       "give either flat_mm, between the bends' tangent points, or outside_mm, the leg as "
                       "DIN 6935 measures it");
    return given.flat ? *given.flat : *given.outside;
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

Cutout cutout_of(const StrictTable& table, const CutoutEntry& given) {
    const bool hole = table.has("hole_mm"), slot = table.has("slot_mm");
    if (hole == slot)
        table.complain("", hole ? "it is both a hole and a slot" : "it is neither a hole nor a slot",
                       "give either hole_mm = diameter or slot_mm = [length, width]");
    if (hole) return {given.at, given.across, *given.hole, *given.hole};
    const bool two = given.slot.size() == 2;
    if (!two)
        table.complain("slot_mm", "a slot has two sizes",
                       "give slot_mm = [length, width], its length along the strip");
    return {given.at, given.across, given.slot[1], given.slot[0]};
}

}  // namespace

Part read_part(const StrictTable& table, const PartTable& given, double thickness) {
    Part part;
    part.length_tolerance = given.length_tolerance, part.angle_tolerance = given.angle_tolerance;
    part.radius_tolerance = given.radius_tolerance, part.profile_tolerance = given.profile_tolerance;
    const std::vector<StrictTable> entries = path_entries(table);
    check_length(table, entries.size());
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const bool flat_is_next = i % 2 == 0;
        check_turn(entries[i], flat_is_next);
        if (flat_is_next)
            part.flats.push_back(length_of(entries[i], given.path[i])),
                part.leg_tolerances.push_back(given.path[i].leg_tolerance);
        else
            part.bends.push_back(bend_of(entries[i], given.path[i], part.bends));
    }
    if (part.flats.size() == part.bends.size())
        entries.back().complain("", "the path ends with a bend", path_remedy);
    turn_legs_into_flats(entries, part, thickness);
    return part;
}

std::vector<Cutout> read_cutouts(const StrictTable& table, const PartTable& given, const Part& part,
                                 double thickness, double width, std::optional<double> blank_length) {
    const double length = blank_length.value_or(longest_blank(part, thickness));
    const std::vector<StrictTable> entries = table.tables("cutouts", {});
    std::vector<Cutout> cutouts;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const Cutout cutout = cutout_of(entries[i], given.cutouts[i]);
        check_inside(entries[i], "at_mm", cutout.at, cutout.length, length, "blank's length");
        check_inside(entries[i], "across_mm", cutout.across, cutout.width, width, "strip's width");
        cutouts.push_back(cutout);
    }
    return cutouts;
}

void complain_of_bend(const StrictTable& table, std::size_t bend, const std::string& wrong,
                      const std::string& right) {
    path_entries(table).at(2 * bend + 1).complain("", wrong, right);
}

}  // namespace overbend::files
