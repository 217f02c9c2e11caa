// Springback by rule, for planning: springback of a bend with the drawing's radius, from the moment of pure
// bending. The strokes themselves follow no rule.
//
// Units  mm, rad.

#pragma once

#include "sim/material/card.h"

namespace overbend::plan {

// How far a bend opens that has this inside radius when free: the curvature released, over the length of
// strip that carries the bend's whole moment,
//   springback = (curvature under load - free curvature) length
// A length over which the moment falls to nothing counts half, as in a beam bent in three points; so it is
// half of the bend's arc and of both arms, from the nose to the shoulders, for a V.
//
// This is the curvature released, 1/mm, > 0; the caller knows the length.
// hold    of the width, 0 to 1, see sim/material/layer_law.h
double springback_curvature(const material::Card& card, double hold, double thickness, double inside_radius);

}  // namespace overbend::plan
