// What `bend` prints of a stroke.

#pragma once

#include "scenes/commands/bend_options.h"
#include "scenes/job/run/strip_stroke.h"

namespace overbend::commands {

// As a table or one JSON object, as the options say. Throws NotSolved for a number that is not finite.
void print_bend(const job::StripResult& result, const BendOptions& given);

}  // namespace overbend::commands
