// Pairs of V tools for a bend table: from sizes, or from the V strokes of a case.
//
// Units  mm, rad.

#pragma once

#include <string>
#include <vector>

#include "scenes/files/case/case.h"
#include "scenes/job/run/strip_bends.h"

namespace overbend::job {

struct TableTools {
    std::string name;  // "die opening 8 mm", "wedge in block, face 2"
    files::Tool punch, die;
    int die_face = 1;
    double die_opening = 0.0, shoulder_radius = 0.0, nose_radius = 0.0;
};

// As `bend` makes them. Throws OutOfRange: tools that cannot be.
TableTools table_tools(const VeeBend& bend);

// Each pair once, in the order of the case's strokes; empty: no stroke of it is a V stroke.
std::vector<TableTools> table_tools(const files::Case& c);

}  // namespace overbend::job
