// A tool whose outline is given by its corners, by its lines and arcs or by a DXF file.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scenes/files/case/fields.h"
#include "sim/tool/arc_outline.h"

namespace overbend::files {

// A DXF file that an outline is taken from: turned about `origin`, which becomes the tool's own origin.
struct OutlineFile {
    std::string path;                        // whole, right from any folder
    std::string layer;                       // empty: all of them
    double gap = 0.0;                        // mm, gaps up to it are closed
    tool::Vec2 origin = tool::Vec2::Zero();  // mm, in the file
    double turn = 0.0;                       // rad, counter-clockwise
};

// A closed outline given by its corners, by its lines and arcs or by a DXF file; role decided by where a step
// uses it.
struct OutlineTool {
    tool::ArcOutline outline;
    std::vector<tool::PathPoint> points = {};  // what it was made of, as a file gives it; whatever makes the
                                               // outline otherwise leaves them empty
    std::optional<OutlineFile> file = std::nullopt;
};

template <>
inline OutlineTool fresh<OutlineTool>() {
    return {tool::round_corners({{{0.0, 0.0}, 0.0}, {{1.0, 0.0}, 0.0}, {{0.0, 1.0}, 0.0}})};
}
}  // namespace overbend::files
