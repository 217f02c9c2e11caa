// The legs of a part, as they are measured: along a flat, on the outside, from the strip's end or the bend
// before it to the bend behind it. A bend of up to 90 degrees ends a leg where the outer faces of its flats
// cross, a sharper one where it reaches furthest along the flat, at the outer tangent (DIN 6935).
//
// Units  mm, rad.

#pragma once

#include <vector>

#include "scenes/files/case/case.h"
#include "scenes/job/run/bent_strip.h"
#include "scenes/job/run/drawing.h"
#include "sim/strip/strip_state.h"

namespace overbend::job {

// One a flat.
std::vector<double> drawn_legs(const files::Case& c);
// used: the blank that the strip was bent from.
std::vector<double> made_legs(const files::Case& c, const Blank& used, const BentStrip& finished);

// What a bend takes of both legs beside it: as drawn, from its tangent points; as made, from the middles of
// the flats beside it.
double drawn_corner(const files::Case& c, int bend);
double made_corner(const files::Case& c, const Blank& used, const BentStrip& finished, int bend);

// As the blank is drawn, whatever its last position in the press.
strip::StripState as_drawn(strip::StripState strip);

}  // namespace overbend::job
