// Reads all tools of a case: those of the rack that it names, and its own. Reads a rack.

#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "scenes/files/case/case.h"

namespace overbend::files {

class StrictTable;

struct ToolsAtHand {
    std::string rack;         // as Case::rack
    std::vector<Tool> tools;  // the rack's before the case's own
};
// beside  the folder that a relative path of a rack starts from
// width   of the strip, which shares a pad's wound springs, mm
// Throws CaseError, in the case or in its rack: a tool that cannot be, a name given twice, no such rack.
ToolsAtHand read_tools(const StrictTable& top, const std::filesystem::path& beside, double width);

struct Rack {
    std::string title;
    std::vector<Tool> tools;
};
// A rack: a name in assets/tools, or a path. The width of the strip matters for pads with wound springs
// alone. Throws as above.
Rack read_rack(const std::string& name_or_path, const std::filesystem::path& beside, double width = 20.0);

}  // namespace overbend::files
