// Laws and histories for the finite-difference checks: layers that have been strained to and fro.

#pragma once

#include <vector>

#include "sim/material/layer_law.h"

namespace overbend::tests {

// Invented cards.
inline material::Card card_with(const material::Hardening& hardening,
                                const material::Backstress& backstress = {}) {
    material::Card card;
    card.youngs_modulus = 206e3;
    card.poisson = 0.3;
    card.hardening = hardening;
    if (backstress.C > 0.0) card.backstress = {backstress};
    return card;
}

// The layer after these strains in turn.
inline material::LayerHistory after(const material::LayerLaw& law, const std::vector<double>& strains) {
    material::LayerHistory history;
    for (const double e : strains)
        history = material::advance(law, history, material::respond(law, history, e));
    return history;
}

}  // namespace overbend::tests
