// From the options of `bend` to the stroke of its kind.
//
// Units  mm, rad, N per mm of strip width.

#pragma once

#include "scenes/process/strip_stroke.h"
#include "scenes/program/bend_options.h"

namespace overbend::program {

// given: checked (see check_together). Throws OutOfRange for tools that cannot be, CLI's errors for options
// that do not suit one another.
scenes::StripResult bend_of_kind(const BendOptions& given, const material::Card& material,
                                 const stroke::StrokeOptions& options);

}  // namespace overbend::program
