#include "tests/case/whole_cases.h"

namespace overbend::tests {

const std::string hard_steel = R"(title = "Invented steel, hardened"
source = "invented"
hardness_HRC = 60
youngs_modulus_MPa = 210000
poisson = 0.3
density_kg_m3 = 7700
compressive_yield_MPa = 2100
bending_strength_MPa = 3000
safety_tension = 4
safety_compression = 1.5
price_per_kg = 7
hardened = true
[sources]
density_kg_m3 = "invented too"
safety_tension = "this as well"
)";

const std::string soft_steel = R"(title = "Invented steel, soft"
source = "invented"
hardness_HV = 180
youngs_modulus_MPa = 210000
poisson = 0.3
density_kg_m3 = 7850
compressive_yield_MPa = 305
bending_strength_MPa = 305
safety_tension = 2
safety_compression = 1.5
)";

const std::string press_card = R"(title = "Invented press"
source = "invented"
force_kN = 40
stroke_mm = 80
daylight_mm = 260
throat_mm = 150
line_load_kN_per_m = 400
off_centre_kN_m = 0.8
energy_J = 350
price_per_h = 21
idle_kW = 0.7
[speed]
approach_mm_per_s = 80
pressing_mm_per_s = 9
return_mm_per_s = 75
slow_above_mm = 4
dwell_s = 0.3
[punch_holder]
width_mm = 24
height_mm = 45
[die_holder]
width_mm = 60
height_mm = 30
[ram]
width_mm = 80
height_mm = 120
[bed]
width_mm = 90
height_mm = 200
[gauge]
height_mm = 6
length_mm = 30
draws_back_mm = 0
reach_mm = 220
nearest_mm = 6
)";

}  // namespace overbend::tests
