// Where the drawing's bends lie on the blank.
//
// Units  mm, rad.

#pragma once

#include "scenes/files/case/blank.h"
#include "scenes/files/case/case.h"

namespace overbend::job {

using files::Blank;

// Bend lines and length by DIN 6935 unless the case gives them; of a given length alone the last flat takes
// up the difference.
Blank make_blank(const files::Case& c);

// In grams, less the cut-outs; 0 when the card has no density.
double blank_mass(const files::Case& c, const Blank& blank);

}  // namespace overbend::job
