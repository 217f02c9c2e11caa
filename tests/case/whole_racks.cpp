#include "tests/case/whole_cases.h"

namespace overbend::tests {

const std::string racked_case = R"(format = 1
title = "Angle with tools from a rack"
rack = "small-press"
press = "bench-60"

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
name = "own punch"
kind = "vee-punch"
angle_deg = 60
nose_radius_mm = 1
[tool.relief]
side = "left"
from_mm = 9
to_mm = 45
set_back_mm = 3
neck_mm = 2.5
root_radius_mm = 4

[[step]]
name = "only"
bends = ["bend 1"]
punch = "own punch"
[step.die]
tool = "two-way die 8"
)";

const std::string rack_file = R"(title = "Two tools"
source = "invented"

[[tool]]
name = "punch"
kind = "vee-punch"
angle_deg = 60
nose_radius_mm = 1

[[tool]]
name = "die"
kind = "open-die"
opening_mm = 8
shoulder_radius_mm = 1
)";

}  // namespace overbend::tests
