#include "tests/case/whole_cases.h"

namespace overbend::tests {

const std::string whole_case = R"(format = 1
title = "Clip with everything"

[strip]
thickness_mm = 1
thickness_tolerance_mm = 0.03
width_mm = 20.5
blank_length_mm = 150
bend_lines_mm = [25.5, 47.5, 55, 82, 112.5]
rolling = "crosswise"

[material]
title = "Invented steel"
source = "invented"
youngs_modulus_MPa = 206000
poisson = 0.3
density_kg_m3 = 7850
[material.hardening]
law = "swift"
K_MPa = 520
e0 = 0.006
n = 0.22

[part]
angle_tolerance_deg = 0.5
length_tolerance_mm = 0.25
radius_tolerance_mm = 0.35
profile_tolerance_mm = 0.45

[[part.path]]
flat_mm = 24
tolerance_mm = 0.15
[[part.path]]
bend_deg = 90
inside_radius_mm = 1.5
name = "lip"
tolerance_deg = 0.75
radius_tolerance_mm = 0.55
[[part.path]]
flat_mm = 20
[[part.path]]
bend_deg = 40
inside_radius_mm = 1
tolerance_deg = "reference"
[[part.path]]
flat_mm = 6.5
[[part.path]]
bend_deg = -40
inside_radius_mm = 1
[[part.path]]
flat_mm = 25
[[part.path]]
bend_deg = 90
inside_radius_mm = 2
name = "left wall"
[[part.path]]
flat_mm = 26
[[part.path]]
bend_deg = 90.0
inside_radius_mm = 2.0
name = "right wall"
[[part.path]]
flat_mm = 15

[[part.cutouts]]
at_mm = 12
across_mm = 10
hole_mm = 5
[[part.cutouts]]
at_mm = 60.0
across_mm = 9.5
slot_mm = [8, 4.2]

[[tool]]
name = "wedge"
kind = "vee-punch"
angle_deg = 60
nose_radius_mm = 1
height_mm = 70
shank_width_mm = 14
steel = "1.2379"
rating_kN_per_m = 250
length_mm = 40
price = 180

[[tool]]
name = "two-way"
kind = "vee-die"
width_mm = 40
height_mm = 50
[[tool.faces]]
angle_deg = 86
opening_mm = 10
shoulder_radius_mm = 1.5
bottom_radius_mm = 0.5
[[tool.faces]]
angle_deg = 62
opening_mm = 8

[[tool]]
name = "slot"
kind = "open-die"
opening_mm = 8
shoulder_radius_mm = 1
depth_mm = 20
width_mm = 40

[[tool]]
name = "upper"
kind = "offset-punch"
offset_mm = 5
angle_deg = 40
nose_radius_mm = 1
root_radius_mm = 1
clearance_mm = 1.1
land_mm = 12
height_mm = 45

[[tool]]
name = "lower"
kind = "offset-die"
offset_mm = 5
angle_deg = 40
shoulder_radius_mm = 1
root_radius_mm = 1
land_mm = 12
height_mm = 35

[[tool]]
name = "foot"
kind = "channel-punch"
width_mm = 30
corner_radius_mm = 2
side_relief_deg = 3
foot_height_mm = 18
shank_width_mm = 10
shank = "right"
height_mm = 55

[[tool]]
name = "channel"
kind = "channel-die"
opening_mm = 32.4
shoulder_radius_mm = 3
depth_mm = 15
floor_crown_mm = 0.2
width_mm = 70
height_mm = 40

[[tool]]
name = "block"
kind = "outline"
[[tool.points]]
x_mm = -10
y_mm = 0
radius_mm = 1
[[tool.points]]
x_mm = 10
y_mm = 0
[[tool.points]]
x_mm = 10
y_mm = 20
bulge = 0.4
[[tool.points]]
x_mm = -10
y_mm = 20

[[step]]
name = "lip"
bends = ["lip"]
punch = "wedge"
[step.die]
tool = "two-way"
face = 2
[step.place]
face = "up"
first = "right"
shift_mm = 0.25
[step.stop]
free_deg = 90

[[step]]
name = "offset"
bends = ["bend 3", "bend 2"]
punch = "upper"
die = "lower"
[step.stop]
force_kN = 12.5

[[step]]
name = "channel"
bends = ["left wall", "right wall"]
punch = "foot"
die = "channel"
[step.stop]
travel_mm = 12

[press]
title = "Bench press"
force_kN = 40
stroke_mm = 80
daylight_mm = 260
throat_mm = 150
line_load_kN_per_m = 400
off_centre_kN_m = 0.8
energy_J = 350
price_per_h = 21
idle_kW = 0.7

[press.eccentric]
rated_angle_deg = 25

[press.speed]
approach_mm_per_s = 80
pressing_mm_per_s = 9
return_mm_per_s = 75
slow_above_mm = 4
dwell_s = 0.3

[press.punch_holder]
width_mm = 24
height_mm = 45

[press.die_holder]
width_mm = 60
height_mm = 30

[press.ram]
width_mm = 80
height_mm = 120

[press.bed]
width_mm = 90
height_mm = 200

[press.gauge]
height_mm = 6
length_mm = 30
draws_back_mm = 0
reach_mm = 220
nearest_mm = 6

[handling]
stroke_s = 6.5
turn_s = 3
flip_s = 3.5
tool_change_s = 240
gauge_change_s = 25
slide_s = 7

[cost]
money = "EUR"
batch = 2500
strip_price_per_kg = 4.1
scrap_price_per_kg = 0.7
gap_mm = 3
end_scrap_percent = 3.3
sheet_mm = [1500, 600]
cutting_mm_per_s = 70
cutting_most_mm_per_s = 160
pierce_s = 0.7
cutting_price_per_h = 85
deburring_s = 2.5
programming_s = 700
trial_parts = 3
first_article_s = 500
lay_in_s = 3.5
press_price_per_h = 24
worker_price_per_h = 48
tool_steel_price_per_kg = 9
design_h = 2.5
cam_h = 0.8
design_price_per_h = 72
block_allowance_mm = 2
milling_cm3_per_min = 18
erosion_mm2_per_min = 140
grinding_h = 1.2
fitting_h = 1.5
milling_price_per_h = 65
erosion_price_per_h = 55
grinding_price_per_h = 58
fitting_price_per_h = 62
hardening_price_per_kg = 5.5
hardening_least_price = 65
spring_price = 2.5
spring_steel_price_per_kg = 28
tool_batches = 4
regrind_strokes = 50000
regrinds = 6
regrind_h = 0.8
cleaning_price = 0.015
inspection_s = 12
inspected_percent = 7
rejected_percent = 1.5
packaging_price = 0.025
storage_price_per_month = 0.003
storage_months = 2
energy_price_per_kWh = 0.31
idle_kW = 0.9
efficiency_percent = 33
overhead_percent = 12

[run]
friction = 0.12
layers = 15
elements_per_thickness = 5.5
)";

}  // namespace overbend::tests
