// Records of tensile tests that never were: of a known law, with what machines add to it.

#pragma once

#include <cstdint>
#include <optional>

#include "sim/material/card.h"
#include "sim/tensile/record.h"

namespace overbend::tests {

struct SyntheticTest {
    material::Hardening law = material::Swift{520.0, 0.01, 0.2};
    double modulus = 208e3;             // MPa
    double machine_slope = 0.0;         // of the elastic part with the machine's stretch, MPa; 0: no stretch
    double scatter = 0.0;               // of the stress, one standard deviation, MPa
    double strain_scatter = 0.0;        // of the strain
    double slack = 0.0;                 // strain before there is load
    std::optional<double> upper_yield;  // MPa, with a plateau at the law's stress at its end
    double yield_elongation = 0.0;      // plastic strain of the plateau
    double r_value = 0.0;               // with a column of width strains when it is above 0
    int elastic_points = 80, plastic_points = 300;
    bool breaks = true;  // else it ends at 0.9 of the uniform strain
    std::uint32_t seed = 1;
};

tensile::Record synthetic_record(const SyntheticTest& test);

// Of the law without scatter: the greatest engineering stress, and the plastic engineering strain there.
struct UniformPoint {
    double strength = 0.0, elongation = 0.0, total = 0.0;
};
UniformPoint uniform_of(const SyntheticTest& test);
// The stress at which the law meets the line moved by 0.2 per cent.
double proof_of(const SyntheticTest& test);

}  // namespace overbend::tests
