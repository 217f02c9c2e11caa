// What `bend` prints of a stroke.

#pragma once

#include "scenes/process/strip_stroke.h"
#include "scenes/program/bend_options.h"

namespace overbend::program {

// As a table or one JSON object, as the options say. Throws NotSolved for a number that is not finite.
void print_bend(const scenes::StripResult& result, const BendOptions& given);

}  // namespace overbend::program
