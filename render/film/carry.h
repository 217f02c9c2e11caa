// How the strip moves from its position after one stroke to its position for the next.
//
// The two recordings hold the same strip, moved rigidly, perhaps turned end for end, turned over, or both.
// Which of these it was is found from the shapes, matched by the position on the blank. Units mm, rad.

#pragma once

#include "render/picture/shown_job.h"

namespace overbend::film {

using picture::Turning;

struct Carry {
    Turning turning = Turning::none;
    double turn = 0.0;  // in the plane, after the turning; of both, which is half a turn in the
                        // plane, the whole of it by the shorter way
    picture::Place from = picture::Place::Zero();  // middle of the strip before
    picture::Place to = picture::Place::Zero();    // and after
};

Carry find_carry(const stroke::Recording& before, const stroke::Recording& after);

// How the part is held off the die: shifted, and drawn so much larger, as if moved towards the viewer.
struct Hold {
    picture::Place shift = picture::Place::Zero();  // mm
    double growth = 0.0;                            // part of its size
};

// How far the carrying has come: taken off the die, turned, moved to the next place; each 0 to 1.
struct Carried {
    double off = 0.0;
    double turned = 0.0;
    double moved = 0.0;
};

// The motion of the drawn strip. {0, 0, 0} is where the stroke before leaves it and {0, 1, 1} where
// the next one wants it; off the die it is held as the two holds have it.
picture::StripMotion motion_at(const Carry& carry, const Carried& carried, const Hold& before,
                               const Hold& after);

}  // namespace overbend::film
