#include "sim/tool/offset_corners.h"

#include <algorithm>
#include <cmath>

#include "sim/errors.h"
#include "sim/tool/figures.h"
#include "sim/units.h"

namespace overbend::tool {

void check_corners(const OffsetCorners& corners) {
    require_not_negative(corners.convex_name, corners.convex_radius);
    require_not_negative(corners.concave_name, corners.concave_radius);
    constexpr double rounding = 1e-12;  // rad, of 90 deg
    if (!(corners.angle > 0.0 && corners.angle <= 0.5 * pi + rounding)) {
        throw OutOfRange("bend angle of the offset", deg(corners.angle) + " cannot be",
                         "give more than 0 deg and at most 90 deg");
    }
    const double slope = corners.offset / std::sin(corners.angle);
    const double tan_half = std::tan(0.5 * corners.angle);
    const double both = corners.convex_radius + corners.concave_radius;
    if (both * tan_half > slope) {
        throw OutOfRange(corners.convex_name,
                         mm(corners.convex_radius) + " and the " + corners.concave_name + " of " +
                             mm(corners.concave_radius) + " do not fit on a sloped face " + mm(slope) +
                             " long",
                         "at most " + mm(slope / tan_half) + " fits for both together");
    }
    const double larger = std::max(corners.convex_radius, corners.concave_radius);
    if (corners.land <= larger * tan_half) {
        throw OutOfRange("land", mm(corners.land) + " ends within the arc of a corner",
                         "give more than " + mm(larger * tan_half));
    }
}

double run(const OffsetCorners& corners) {
    // not offset / tan(angle), which misses 0 at 90 deg by rounding
    return corners.offset * std::cos(corners.angle) / std::sin(corners.angle);
}

}  // namespace overbend::tool
