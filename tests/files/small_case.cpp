#include "tests/files/small_case.h"

#include "tests/files/own_folder.h"

namespace overbend::tests {

const std::string small_case = R"(format = 1
title = "Small step"

[strip]
material = "dc01"
thickness_mm = 1.0
width_mm = 20.0

[part]
path = [
  { flat_mm = 12.0 },
  { bend_deg = 60.0, inside_radius_mm = 1.4, name = "heel" },
  { flat_mm = 20.0 },
  { bend_deg = -60.0, inside_radius_mm = 1.4, name = "toe" },
  { flat_mm = 12.0 },
]

[[tool]]
name = "wedge"
kind = "vee-punch"
angle_deg = 60.0
nose_radius_mm = 1.0

[[tool]]
name = "block"
kind = "vee-die"
faces = [ { angle_deg = 84.0, opening_mm = 8.0 } ]

[[step]]
name = "first"
bends = ["heel"]
punch = "wedge"
die = "block"
stop = { free_deg = 60.0 }

[[step]]
name = "second"
bends = ["toe"]
punch = "wedge"
die = "block"
place = { face = "down" }

[run]
layers = 5
elements_per_thickness = 3
)";

std::string unsolvable_case() {
    return replaced(
        replaced(replaced(small_case, "stop = { free_deg = 60.0 }", "stop = { force_kN = 10000 }"),
                 "thickness_mm = 1.0", "thickness_mm = 0.8"),
        "elements_per_thickness = 3", "elements_per_thickness = 1");
}

}  // namespace overbend::tests
