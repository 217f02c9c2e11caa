// V tools: a wedge, and a block with grooves or a slot. Its kinds, as kinds.h says.

#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "scenes/files/case/kind.h"
#include "sim/tool/die.h"
#include "sim/tool/punch.h"

namespace overbend::files {

Kind kind_of(const tool::VeePunch&);
void describe(Fields& f, tool::VeePunch& t);
std::string figures(const tool::VeePunch& t);
void measure(const drawing::Measurer& m, const tool::VeePunch& t);

Kind kind_of(const tool::VeeDie&);
void describe(Fields& f, tool::VeeDie& t);
std::string figures(const tool::VeeDie& t);
void measure(const drawing::Measurer& m, const tool::VeeDie& t);

Kind kind_of(const tool::OpenDie&);
void describe(Fields& f, tool::OpenDie& t);
std::string figures(const tool::OpenDie& t);
void measure(const drawing::Measurer& m, const tool::OpenDie& t);

void describe(Fields& f, tool::Relief& t);
void describe(Fields& f, tool::VeeFace& t);

}  // namespace overbend::files
