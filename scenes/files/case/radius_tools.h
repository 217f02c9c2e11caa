// Radius tools: a large inside radius is bottomed in a groove of a stated radius. As kind.h says.

#pragma once

#include "scenes/files/case/kind.h"
#include "sim/tool/radius_tools.h"

namespace overbend::files {

Kind kind_of(const tool::RadiusPunch&);
void describe(Fields& f, tool::RadiusPunch& t);
std::string figures(const tool::RadiusPunch& t);
void measure(const drawing::Measurer& m, const tool::RadiusPunch& t);

Kind kind_of(const tool::RadiusDie&);
void describe(Fields& f, tool::RadiusDie& t);
std::string figures(const tool::RadiusDie& t);
void measure(const drawing::Measurer& m, const tool::RadiusDie& t);

}  // namespace overbend::files
