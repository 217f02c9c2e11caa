// All drawings of a case: each tool, the blank, the finished part.

#pragma once

#include <string>
#include <vector>

#include "render/drawing/drawing_sheet.h"
#include "render/drawing/sizes_in_words.h"
#include "scenes/files/case/case.h"
#include "scenes/files/dxf/dxf_drawing.h"
#include "scenes/job/run/flat_pattern.h"

namespace overbend::documents {

struct Drawing {
    std::string file;      // without its ending, safe on any system: "tool-two-way-block", "blank", "part"
    std::string name;      // what is drawn: "wedge: V punch, section"
    std::string material;  // of the steel's card, or the strip's; "not stated"
    drawing::DrawnSheet sheet;
    files::DxfDrawing dxf;
};

// Tools that the case's steps use, or all where it has no steps; then the blank and the part.
std::vector<Drawing> all_drawings(const files::Case& c, const job::FlatPattern& pattern,
                                  drawing::Tolerances tolerances);

// Letters, digits and "-" of it, small; never empty, at most 60 long.
std::string safe_file_name(const std::string& name);

}  // namespace overbend::documents
