#include "sim/tool/spring.h"

#include <cmath>

#include "sim/errors.h"
#include "sim/tool/figures.h"

namespace overbend::tool {

void check(const Spring& spring) {
    const auto not_negative = [](const char* name, double value, const char* unit) {
        if (std::isfinite(value) && value >= 0.0) return;
        throw OutOfRange(name, figure(value) + unit + " cannot be",
                         std::string("give 0") + unit + " or more");
    };
    not_negative("spring preload", spring.preload, " N/mm");
    not_negative("spring rate", spring.rate, " N/mm2");
    if (!(spring.solid > 0.0))
        throw OutOfRange("spring travel", mm(spring.solid) + " cannot be", "give more than 0 mm");
    if (spring.preload == 0.0 && spring.rate == 0.0)
        throw OutOfRange("spring", "neither a preload nor a rate is given", "give one of them above 0");
}

double spring_rate(const HelicalSpring& s) {
    require_above_zero("wire diameter", s.wire);
    require_above_zero("coil diameter", s.coil_diameter);
    if (s.coil_diameter <= s.wire)
        throw OutOfRange("coil diameter",
                         mm(s.coil_diameter) + " is not more than the wire diameter, " + mm(s.wire),
                         "give the mean diameter of the coil");
    if (!(s.turns > 0.0) || !std::isfinite(s.turns))
        throw OutOfRange("turns", figure(s.turns) + " cannot be", "give more than 0");
    if (!(s.shear_modulus > 0.0) || !std::isfinite(s.shear_modulus))
        throw OutOfRange("shear modulus", figure(s.shear_modulus) + " MPa cannot be", "give more than 0 MPa");
    const double D = s.coil_diameter, d = s.wire;
    return s.shear_modulus * d * d * d * d / (8.0 * D * D * D * s.turns);
}

}  // namespace overbend::tool
