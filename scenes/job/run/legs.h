// The finished strip as legs: flats as straight lines, the corners where they cross.
//
// Units  mm, rad; the strip lies as drawn, its blank's left end left and its upper face up.

#pragma once

#include <Eigen/Core>

#include "scenes/files/case/case.h"
#include "scenes/job/run/drawing.h"
#include "sim/strip/strip_state.h"

namespace overbend::job {

// As the blank is drawn, whatever its last position in the press.
strip::StripState as_drawn(strip::StripState strip);

// A bend of more than 170 degrees, as in a hem: the lines of the flats beside it are all but parallel.
bool is_doubled(const files::Bend& bend);

// What a drawn bend adds to the leg on either side of it, along the mid-line's flats.
double drawn_half(const files::Case& c, const files::Bend& bend);

// The line of a flat: its middle on the blank, and its direction there, to the blank's right.
struct FlatLine {
    Eigen::Vector2d at, along;
};
FlatLine flat_line(const Blank& blank, const strip::StripState& strip, int flat);

Eigen::Vector2d crossing(const FlatLine& a, const FlatLine& b);

// The furthest point of a bend's mid-line along a direction.
Eigen::Vector2d furthest(const Blank& blank, const strip::StripState& strip, int bend,
                         const Eigen::Vector2d& along);

Eigen::Vector2d point_of(const strip::StripState& strip, double blank_position);

}  // namespace overbend::job
