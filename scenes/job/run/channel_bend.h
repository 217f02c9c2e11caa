// A channel bent in one stroke round a flat foot, with or without a pad on a spring under the foot.
//
// Units  mm, rad, N per mm of strip width.

#pragma once

#include <optional>

#include "scenes/job/run/strip_stroke.h"
#include "sim/tool/spring.h"

namespace overbend::job {

struct ChannelBend : StripOptions {
    double punch_width = 20.0;
    double corner_radius = 2.0;       // of the punch's foot
    std::optional<double> clearance;  // between foot and wall; absent: 1.1 thicknesses
    double shoulder_radius = 2.0;     // of the die
    double depth = 12.0;           // of the channel, from the die's top face to where the strip ends its way
    std::optional<double> flange;  // of the strip on either side of the foot; absent: as high as the channel
                                   // is deep, with the shoulder
    std::optional<tool::Spring> pad;  // absent: a floor, without a pad. Its travel is the channel's depth
};

// Throws OutOfRange for tools that cannot be or do not fit one another or the strip.
StripStroke channel_stroke(const ChannelBend& bend);

}  // namespace overbend::job
