#include "scenes/job/run/weight.h"

#include "sim/errors.h"

namespace overbend::job {

double weight_of(const material::Card& card, double thickness) {
    constexpr double standard_gravity = 9.80665;                                        // m/s2, by definition
    if (card.density > 0.0) return card.density * 1e-9 * standard_gravity * thickness;  // kg/mm3
    throw OutOfRange("density", "the card of " + card.name + " has no density, so its weight is not known",
                     "give density_kg_m3 in the card, or leave gravity out");
}

}  // namespace overbend::job
