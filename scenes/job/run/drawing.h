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

// The blank that goes into a bend: by DIN 6935, and by the handbook's straight line for the card's hardness.
double din_allowance(const files::Case& c, const files::Bend& bend);
double handbook_allowance(const files::Case& c, const files::Bend& bend);
// Flats and allowances together.
double developed_length(const files::Case& c, double (*allowance)(const files::Case&, const files::Bend&));

// In grams, less the cut-outs; 0 when the card has no density.
double blank_mass(const files::Case& c, const Blank& blank);

}  // namespace overbend::job
