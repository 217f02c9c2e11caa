// The invented metals of the finite-element tables, isotropic.

#pragma once

#include <stdexcept>
#include <string>
#include <vector>

#include "sim/material/card.h"

namespace overbend::tests {

// A1 ... A5; of A3 the curve 276 + 54 (1 - exp(-14 p)).
inline material::Card finite_element_card(const std::string& name) {
    material::Card card;
    card.name = name;
    card.poisson = 0.3;
    if (name == "A1") {
        card.youngs_modulus = 206e3;
        card.hardening = material::Swift{520.0, 0.006, 0.22};
    } else if (name == "A2") {
        card.youngs_modulus = 193e3;
        card.hardening = material::Swift{1350.0, 0.035, 0.42};
    } else if (name == "A3") {
        card.youngs_modulus = 69e3;
        card.poisson = 0.33;
        card.hardening = material::Voce{276.0, 54.0, 14.0};
    } else if (name == "A4") {
        card.youngs_modulus = 190e3;
        card.hardening = material::Linear{1200.0, 350.0};
    } else if (name == "A5") {
        card.youngs_modulus = 200e3;
        card.hardening = material::Linear{300.0, 0.0};
    } else {
        throw std::invalid_argument("no finite-element card " + name);
    }
    return card;
}

}  // namespace overbend::tests
