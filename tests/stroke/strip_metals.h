// Metals and the V bend that the checks of strokes start from. Invented.

#pragma once

#include "scenes/job/run/strip_bends.h"
#include "tests/stop_at.h"

namespace overbend::tests {

inline material::Card hardening_metal() {
    material::Card card;
    card.name = "hardening";
    card.youngs_modulus = 206e3;
    card.hardening = material::Swift{520.0, 0.006, 0.22};
    return card;
}

inline material::Card perfectly_plastic_metal() {
    material::Card card;
    card.name = "perfectly plastic";
    card.youngs_modulus = 200e3;
    card.hardening = material::Linear{300.0, 0.0};
    return card;
}

// 1 mm over 8 mm, nose and shoulders 1 mm, friction 0.1.
inline job::VeeBend plain_bend() {
    job::VeeBend vee;
    vee.material = hardening_metal();
    return vee;
}

}  // namespace overbend::tests
