// A step of a case set up as a stroke: tools, forming zone, the strip placed, the stop.
//
// Units  mm, rad.

#pragma once

#include "scenes/files/case/case.h"
#include "scenes/job/run/drawing.h"
#include "sim/strip/mesh.h"
#include "sim/stroke/stroke.h"

namespace overbend::job {

// The flat strip of a case, with its mesh fine where its steps will bend and press it; or in these zones.
strip::StripState make_strip(const files::Case& c, const Blank& blank);
strip::StripState make_strip(const files::Case& c, double length, const std::vector<strip::FineZone>& zones);

// made: which bends have been made already. The strip is turned as the step asks, placed, and met by the
// punch. Throws OutOfRange when it cannot be placed.
stroke::StrokeScene make_scene(const files::Case& c, const Blank& blank, const files::Step& step,
                               const strip::StripState& strip, const std::vector<bool>& made);

}  // namespace overbend::job
