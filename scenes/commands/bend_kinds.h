// From the options of `bend` to the stroke of its kind.
//
// Units  mm, rad, N per mm of strip width.

#pragma once

#include "scenes/commands/bend_options.h"

namespace overbend::commands {

// given: checked (see check_together). Throws OutOfRange for tools that cannot be, WrongUsage for options
// that do not suit one another.
job::StripResult bend_of_kind(const BendOptions& given, const material::Card& material,
                              const stroke::StrokeOptions& options);

}  // namespace overbend::commands
