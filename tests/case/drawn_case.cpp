#include "tests/case/whole_cases.h"

namespace overbend::tests {

const std::string drawn_case = R"(format = 1
title = "Angle over a block from a drawing"

[strip]
material = "dc01"
thickness_mm = 1
width_mm = 20

[[part.path]]
flat_mm = 25
[[part.path]]
bend_deg = 90
inside_radius_mm = 1
[[part.path]]
flat_mm = 25

[[tool]]
name = "block"
kind = "outline"
file = "block.dxf"
layer = "CONTOUR"
gap_mm = 0.02
origin_mm = [5, 10]
turn_deg = 90

[[tool]]
name = "slot"
kind = "open-die"
opening_mm = 8
shoulder_radius_mm = 1

[[step]]
name = "only"
bends = ["bend 1"]
punch = "block"
die = "slot"
)";

}  // namespace overbend::tests
