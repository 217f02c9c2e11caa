// Moving the strip between strokes: turned over, turned end for end, turned and shifted. Its history goes
// along.
//
// Units  mm, rad.

#pragma once

#include "sim/strip/strip_state.h"

namespace overbend::strip {

// Half a turn about the strip's long axis: the other face is up, left stays left. Bend angles change sign.
void turn_over(StripState& strip);

// Half a turn about the vertical: the right end lies left, the same face stays up. Bend angles keep their
// sign.
void turn_end_for_end(StripState& strip);

// Rigid motion in the plane: turned by angle about (about_x, about_y), then shifted.
void move(StripState& strip, double angle, double about_x, double about_y, double shift_x, double shift_y);

// A point of the mid-line and the turn of the section there.
struct MidPoint {
    double x = 0.0, y = 0.0, theta = 0.0;
};
MidPoint mid_point(const StripState& strip, double blank_position);

// The same from nodes given apart, as a recording holds them.
MidPoint mid_point(const std::vector<double>& blank_position, const std::vector<double>& x,
                   const std::vector<double>& y, const std::vector<double>& theta, double at);

// How far the strip turns between two blank positions: theta at the right one less theta at the left one,
// right and left as it now lies.
double turn_between(const std::vector<double>& blank_position, const std::vector<double>& theta, double a,
                    double b);

// Turns and shifts the strip so that the blank position lies at x = at_x and the chord over half_span either
// side of it (cut short at the strip's ends) is level, at y = 0 where the position is.
void level(StripState& strip, double blank_position, double half_span, double at_x);

}  // namespace overbend::strip
