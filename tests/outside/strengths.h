// Flow curves from the two strengths of a standard.

#pragma once

#include <cmath>

#include "tests/outside/simulated_bends.h"

namespace overbend::tests {

// The law K e^n that passes through both: engineering stress `yield` at 0.2 per cent of plastic strain,
// greatest engineering stress `strength`, K (n/e)^n, at the strain n. MPa.
inline material::Card hollomon_card(double youngs_modulus, double poisson, double yield, double strength) {
    const double strain = 0.002 + yield / youngs_modulus;  // engineering
    double low = 0.001, high = 0.6;
    const auto yield_of = [&](double n) {
        const double K = strength * std::pow(std::exp(1.0) / n, n);
        return K * std::pow(std::log1p(strain), n) / (1.0 + strain);
    };
    for (int i = 0; i < 100; ++i) {  // it falls with n
        const double n = 0.5 * (low + high);
        (yield_of(n) > yield ? low : high) = n;
    }
    material::Card card = perfectly_plastic_card(youngs_modulus, poisson, yield);
    card.hardening = material::Hollomon{strength * std::pow(std::exp(1.0) / low, low), low};
    card.tensile_strength = strength;
    return card;
}

}  // namespace overbend::tests
