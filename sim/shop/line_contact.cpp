#include "sim/shop/line_contact.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "sim/units.h"

namespace overbend::shop {

namespace {
constexpr double borne = 3.0;  // times its flow stress
}  // namespace

double contact_modulus(const Elastic& a, const Elastic& b) {
    assert(a.youngs_modulus > 0.0 && b.youngs_modulus > 0.0);
    return 1.0 / ((1.0 - a.poisson * a.poisson) / a.youngs_modulus +
                  (1.0 - b.poisson * b.poisson) / b.youngs_modulus);
}

LineContact line_contact(double force, double modulus, double radius, double flow_stress) {
    assert(force >= 0.0 && modulus > 0.0 && radius > 0.0);
    LineContact contact;
    contact.pressure = std::sqrt(force * modulus / (pi * radius));
    contact.half_width = std::sqrt(4.0 * force * radius / (pi * modulus));
    contact.mean = 0.25 * pi * contact.pressure;
    const double most = borne * flow_stress;
    if (flow_stress > 0.0 && contact.pressure > most) {
        contact.pressure = most;
        contact.mean = std::min(contact.mean, most);
        contact.half_width = 0.5 * force / most;
        contact.capped = true;
    }
    return contact;
}

double radius_for_pressure(double force, double modulus, double pressure) {
    assert(pressure > 0.0);
    return force * modulus / (pi * pressure * pressure);
}

}  // namespace overbend::shop
