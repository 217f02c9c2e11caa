// Springback drawn larger than it is: the strip's change of shape from one state to another, times a number.
//
// How far each place has turned against the strip's middle is what is multiplied; lengths stay, and the strip
// as a whole stays where it is, but for being set up so that it does not lie in what it rests on.
// Units  mm, rad, press coordinates.

#pragma once

#include "render/picture/strip_shape.h"

namespace overbend::picture {

// from, to   states of the recording; what is returned is `to` when the scale is 1
// scale      >= 1
// anchor     place on the blank that stays where it is in `to`, mm from its left end
// The contacts go with their places on the strip. Forces, stresses and strains are those of `to`.
stroke::State with_larger_springback(const stroke::Recording& recording, const stroke::State& from,
                                     const stroke::State& to, double scale, double anchor);

}  // namespace overbend::picture
