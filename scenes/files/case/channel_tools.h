// Channel tools: a foot that pushes the strip into a channel. Its kinds, as kinds.h says.

#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "scenes/files/case/kind.h"
#include "sim/tool/die.h"
#include "sim/tool/punch.h"

namespace overbend::files {

Kind kind_of(const tool::ChannelPunch&);
void describe(Fields& f, tool::ChannelPunch& t);
std::string figures(const tool::ChannelPunch& t);
void measure(const drawing::Measurer& m, const tool::ChannelPunch& t);

Kind kind_of(const tool::ChannelDie&);
void describe(Fields& f, tool::ChannelDie& t);
std::string figures(const tool::ChannelDie& t);
void measure(const drawing::Measurer& m, const tool::ChannelDie& t);

}  // namespace overbend::files
