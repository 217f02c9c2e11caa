// DXF files made by hand: entities in an otherwise empty drawing.

#pragma once

#include <string>
#include <utility>
#include <vector>

#include "scenes/files/dxf/read_dxf.h"

namespace overbend::tests {

using Groups = std::vector<std::pair<int, std::string>>;

std::string groups_text(const Groups& groups);
// In mm, the entities' text inserted. Line 11 is the first of theirs.
std::string dxf_file(const std::string& entities, const std::string& units = "4");
std::string line(double ax, double ay, double bx, double by, const std::string& layer = "0");
std::string arc(double x, double y, double radius, double from_deg, double to_deg,
                const std::string& layer = "0");
struct Corner {
    double x = 0.0, y = 0.0, bulge = 0.0;
};
enum class Ring { open, closed };
std::string light_polyline(const std::vector<Corner>& corners, Ring ring);
std::string heavy_polyline(const std::vector<Corner>& corners, Ring ring);

// The error of reading it and joining it to an outline; none when it was taken.
struct Mistake {
    int line = -1;  // -1: none
    std::string wrong, right;
};
Mistake mistake_of(const std::string& file, const std::string& layer = "", double gap = 0.01);
tool::ArcOutline outline_of(const std::string& file, const std::string& layer = "", double gap = 0.01);

}  // namespace overbend::tests
