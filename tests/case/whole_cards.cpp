#include "tests/case/whole_cases.h"

namespace overbend::tests {

namespace {

const std::string card_head = R"(title = "Invented metal"
source = "invented"
youngs_modulus_MPa = 206000
poisson = 0.3
density_kg_m3 = 7850
)";

}  // namespace

const std::string swift_card = card_head + R"(tensile_strength_MPa = 350
elongation_percent = 30
strength_range_percent = 12
reduction_of_area_percent = 62.5
r_value = 1.4
metal = "steel"
hardness = "hard"
price_per_kg = 2.5
cutting_mm2_per_s = 90
[hardening]
law = "swift"
K_MPa = 520
e0 = 0.006
n = 0.22
[[backstress]]
C_MPa = 3000
gamma = 30
[[backstress]]
C_MPa = 200
gamma = 0
[modulus_drop]
to_MPa = 160000
rate = 60
[sources]
youngs_modulus_MPa = "invented too"
hardening = "this as well"
)";

const std::string hollomon_card = card_head + R"([hardening]
law = "hollomon"
K_MPa = 520
n = 0.2
)";

const std::string voce_card = card_head + R"([hardening]
law = "voce"
Y_MPa = 200
Q_MPa = 150
b = 12.5
)";

const std::string linear_card = card_head + R"([hardening]
law = "linear"
Y_MPa = 250
H_MPa = 0
)";

const std::string table_card = card_head + R"([hardening]
law = "table"
plastic_strain = [0, 0.1, 0.3]
stress_MPa = [200, 300, 330.5]
)";

}  // namespace overbend::tests
