// How the strip gets from where one stroke leaves it to where the next one wants it.
//
// The two recordings hold the same strip, moved rigidly, perhaps turned end for end, turned over, or both.
// Which of these it was is found from the shapes: nodes are matched by their position on the blank. Units mm,
// rad, press coordinates.

#pragma once

#include <string>

#include "render/picture/stage.h"

namespace overbend::render {

enum class Turning { none, end_for_end, over, both };

struct Carry {
    Turning turning = Turning::none;
    double turn = 0.0;           // in the plane, after the turning; of both, which is half a turn in the
                                 // plane, the whole of it by the shorter way
    Place from = Place::Zero();  // middle of the strip before
    Place to = Place::Zero();    // and after
};

Carry find_carry(const stroke::Recording& before, const stroke::Recording& after);

// The motion of the drawn strip part of the way, 0 to 1: lifted off the die, turned, and set down again.
// lift: how high, mm.
StripMotion motion_at(const Carry& carry, double part, double lift);

// "turn the strip end for end and lay it in for the next stroke"
std::string carry_words(const Carry& carry);

// From 0 to 1 with rest at both ends; held outside.
double eased(double part);

}  // namespace overbend::render
