// Axes of a chart: round numbers along them, and where a value lies.
//
// Units  values in those of their words; parts of the axis 0 to 1.

#pragma once

#include <string>
#include <vector>

namespace overbend::chart {

enum class Scale { linear, logarithmic };

struct Axis {
    std::string words;  // "force, kN"
    double low = 0.0;   // both ends are ticks of the axis or round numbers of its decades
    double high = 1.0;  // > low
    Scale scale = Scale::linear;
    std::vector<double> ticks;         // rising, low and high among them if linear
    std::vector<std::string> numbers;  // one a tick

    // 0 at low, 1 at high, beyond them outside. A logarithmic axis takes values above 0 alone.
    double part(double value) const;
};

// The least range. A chart whose axis has to begin at 0 gives it.
struct Extent {
    double low = 0.0;
    double high = 1.0;
    void take_in(double value);  // wider, if need be; values that are not finite are left out
};
Extent nothing_yet();  // takes in whatever comes first

// At most so many ticks (3 at least), at multiples of 1, 2 or 5 times a power of ten; logarithmic: at 1, 2
// and 5 times the powers of ten, or at these alone. An extent without width is widened.
// Throws OutOfRange: an extent that is not finite, or not above 0 on a logarithmic axis.
Axis make_axis(const std::string& words, const Extent& extent, int most_ticks, Scale scale = Scale::linear);

// A number as it stands on an axis whose ticks are `step` apart: as many decimals as the step has, a true
// minus, thousands set apart from 10 000 on.
std::string tick_number(double value, double step);

}  // namespace overbend::chart
