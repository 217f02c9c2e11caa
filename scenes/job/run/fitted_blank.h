// The blank that would have given the drawing's legs, from the strip as it came out.
//
// What a leg (legs.h) came out short against the drawing, its piece of the blank gets. A leg holds the half
// of either bend beside it as it was formed: the bend line moves with the legs left of it, and how a changed
// allowance is shared between left and right is in the measurement.
//
// Two bends that one stroke makes stand as far apart as its tools have them: the leg between them is the
// tools', and the blank cannot correct it. Their lines move together, to where the bends are.
//
// Holds   as far as the bends form alike when their lines are moved, which is what a second run with the
//         fitted lines shows; angles that are wrong are read as they are, and leave some hundredths of a
//         millimetre a degree.
// Units   mm, rad.

#pragma once

#include <vector>

#include "scenes/files/case/case.h"
#include "scenes/job/run/drawing.h"
#include "sim/strip/strip_state.h"

namespace overbend::job {

// Each flat's leg as the drawing has it, less the leg as it came out; mm, one a flat.
std::vector<double> legs_missing(const files::Case& c, const Blank& used, const strip::StripState& finished);

// used      the blank that the strip was bent from
// finished  after the last step, as it lies
// half_arc stays what it was: it only says how far from the lines the flats begin, and wiping is placed by
// it.
Blank fitted_blank(const files::Case& c, const Blank& used, const strip::StripState& finished);

// As it is cut: length and lines in hundredths of a millimetre.
Blank in_hundredths(Blank blank);

}  // namespace overbend::job
