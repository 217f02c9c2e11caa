// Every kind of tool.

#pragma once

#include "scenes/files/case/block_tools.h"
#include "scenes/files/case/channel_tools.h"
#include "scenes/files/case/offset_tools.h"
#include "scenes/files/case/outline_tool.h"
#include "scenes/files/case/radius_tools.h"
#include "scenes/files/case/vee_tools.h"

namespace overbend::files {

using ToolShape =
    std::variant<tool::VeePunch, tool::VeeDie, tool::OpenDie, tool::OffsetPunch, tool::OffsetDie,
                 tool::ChannelPunch, tool::ChannelDie, FlatPunch, FlatDie, WipingPunch, WipingDie, Pad, Clamp,
                 OutlineTool, tool::RadiusPunch, tool::RadiusDie>;

Kind kind_of(const ToolShape& shape);

// In the order of ToolShape.
const std::vector<Kind>& all_kinds();
const Words& kind_list();  // their words

}  // namespace overbend::files
