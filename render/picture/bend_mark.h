// Bends: the lines on the blank, and a bend of the stroke that is shown: where it is, how far it is turned
// now, and the lines of its two flats.
//
// Units  mm, rad; bend angles: 0 is flat, positive turns the right-hand side up as the strip lies.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "render/picture/strip_shape.h"

namespace overbend::picture {

// A bend of the part. A tick marks its line, and travels with the strip.
struct BendLine {
    std::string name;
    double blank_position = 0.0;         // mm from the blank's left end
    double drawing = 0.0;                // bend angle, rad, signed as drawn
    double inside_radius = 0.0;          // mm, of the drawing
    std::optional<double> made = {};     // bend angle of the finished part, signed as drawn
    std::optional<double> allowed = {};  // rad, that it may be off either way; none: it is not judged
    std::optional<double> spread = {};   // rad, that another coil may put it off either way; none: not known
};

struct BendMark {
    std::string name;
    double blank_position = 0.0;  // of the bend line, from the blank's left end
    double reach = 0.0;  // along the blank, to where the flats' directions are taken; 0: beyond the tools'
                         // contacts, see found_reach
    std::optional<double> loaded = {};  // bend angle under load, once it is known
    std::optional<double> free = {};    // bend angle after release, once it is known
    double reach_after = 0.0;           // reach towards the blank's right end where it differs; 0: the same
    double drawing = 0.0;               // bend angle of the drawing

    // Positive opens the bend, whichever way it is turned; none while one of its angles is not known.
    std::optional<double> springback() const {
        if (!loaded || !free) return {};
        return *loaded < 0.0 ? *free - *loaded : *loaded - *free;
    }
    double from() const { return blank_position - reach; }
    double to() const { return blank_position + (reach_after > 0.0 ? reach_after : reach); }
};

struct MeasuredBend {
    double angle = 0.0;            // now
    Spot left, right;              // on the flats, reach away from the bend line
    Place corner = Place::Zero();  // where the flats' mid-lines would meet; on the strip when it is near flat
};

// How far on either side of a bend line the tools touch the strip in any state, and 1.5 thicknesses more; at
// most to the strip's nearer end or half way to the next bend. 8 thicknesses when nothing touches it.
double found_reach(const stroke::Recording& recording, const std::vector<BendMark>& bends, int index);

MeasuredBend measured(const stroke::Recording& recording, const stroke::State& state, const BendMark& bend);

}  // namespace overbend::picture
