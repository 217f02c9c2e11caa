#include "tests/case/whole_cases.h"

namespace overbend::tests {

const std::string pressed_case = R"(format = 1
title = "Rail with a hem"

[strip]
material = "dc01"
thickness_mm = 1
width_mm = 20

[part]
[[part.path]]
outside_mm = 10.1
[[part.path]]
bend_deg = 180
inside_radius_mm = 0.1
name = "edge"
[[part.path]]
flat_mm = 20
[[part.path]]
bend_deg = 90
inside_radius_mm = 1.5
name = "left wall"
[[part.path]]
flat_mm = 17
[[part.path]]
bend_deg = 90
inside_radius_mm = 1.5
name = "right wall"
[[part.path]]
flat_mm = 22
[[part.path]]
bend_deg = -85
inside_radius_mm = 2
name = "lug"
[[part.path]]
flat_mm = 15

[[tool]]
name = "wedge"
kind = "vee-punch"
angle_deg = 24
nose_radius_mm = 0.5

[[tool]]
name = "slot"
kind = "open-die"
opening_mm = 8
shoulder_radius_mm = 1

[[tool]]
name = "wide slot"
kind = "open-die"
opening_at_corners_mm = 12
shoulder_radius_mm = 2

[[tool]]
name = "flat above"
kind = "flat-punch"
width_mm = 30
corner_radius_mm = 1
height_mm = 35

[[tool]]
name = "flat below"
kind = "flat-die"
width_mm = 60
corner_radius_mm = 1.5
height_mm = 45

[[tool]]
name = "foot"
kind = "channel-punch"
width_mm = 20
corner_radius_mm = 1.5
foot_height_mm = 25

[[tool]]
name = "channel"
kind = "channel-die"
opening_mm = 22.1
shoulder_radius_mm = 2
depth_mm = 20

[[tool]]
name = "wiper"
kind = "wiping-punch"
width_mm = 25
corner_radius_mm = 3
clearance_mm = 1.1
height_mm = 50

[[tool]]
name = "block"
kind = "wiping-die"
width_mm = 40
edge_radius_mm = 2.5
height_mm = 70

[[tool]]
name = "ejector"
kind = "pad"
width_mm = 21.6
corner_radius_mm = 0.3
height_mm = 10
[tool.spring]
wire_mm = 4
coil_mm = 20
turns = 6
shear_modulus_MPa = 80000
count = 2
preload_N = 300
travel_mm = 9

[[tool]]
name = "holder"
kind = "clamp"
width_mm = 18
corner_radius_mm = 0.5
height_mm = 12
[tool.spring]
preload_N_per_mm = 150
rate_N_per_mm2 = 5
travel_mm = 30

[[tool]]
name = "round"
kind = "radius-punch"
nose_radius_mm = 9
width_mm = 16
height_mm = 55

[[tool]]
name = "hollow"
kind = "radius-die"
groove_radius_mm = 11
opening_mm = 18
shoulder_radius_mm = 2
width_mm = 44
height_mm = 32

[[step]]
name = "sharp"
bends = ["edge"]
punch = "wedge"
die = "slot"
[step.stop]
free_deg = 150

[[step]]
name = "flat"
bends = ["edge"]
punch = "flat above"
die = "flat below"
[step.stop]
gap_mm = 0.2

[[step]]
name = "rail"
bends = ["left wall", "right wall"]
punch = "foot"
die = "channel"
pad = "ejector"

[[step]]
name = "lug"
bends = ["lug"]
punch = "wiper"
die = "block"
[step.clamp]
tool = "holder"
on = "ram"

[run]
gravity = true
)";

}  // namespace overbend::tests
