// A stroke pressed to its stop, whichever way its bend turns; and what its strip weighs.
//
// Units  mm, rad, N per mm of strip width.

#pragma once

#include "sim/material/card.h"
#include "sim/stroke/stroke.h"

namespace overbend::scenes {

// stroke::press, and also to a free angle that turns downwards (a stop's value below 0), as a wiped flange
// does: its travel is looked for by whole strokes.
stroke::StrokeResult press_scene(const stroke::StrokeScene& scene, const stroke::StrokeOptions& options);

// N per mm2 of the strip's face. Throws OutOfRange when the card has no density.
double weight_of(const material::Card& card, double thickness);

}  // namespace overbend::scenes
