// Offset tools: they press both bends of a step in one stroke. Its kinds, as kinds.h says.

#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "scenes/files/case/kind.h"
#include "sim/tool/die.h"
#include "sim/tool/punch.h"

namespace overbend::files {

Kind kind_of(const tool::OffsetPunch&);
void describe(Fields& f, tool::OffsetPunch& t);
std::string figures(const tool::OffsetPunch& t);
void measure(const drawing::Measurer& m, const tool::OffsetPunch& t);

Kind kind_of(const tool::OffsetDie&);
void describe(Fields& f, tool::OffsetDie& t);
std::string figures(const tool::OffsetDie& t);
void measure(const drawing::Measurer& m, const tool::OffsetDie& t);

}  // namespace overbend::files
