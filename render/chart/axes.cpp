#include "render/chart/axes.h"

#include <algorithm>
#include <cmath>

#include "render/picture/numbers.h"
#include "sim/errors.h"

namespace overbend::chart {

using namespace picture;

namespace {

constexpr double touch = 1e-9;  // of a step: this near, a value is on the tick

// The least of 1, 2 and 5 times a power of ten that is not below the value.
double round_step(double value) {
    const double power = std::pow(10.0, std::floor(std::log10(value)));
    for (const double m : {1.0, 2.0, 5.0})
        if (m * power >= value * (1.0 - touch)) return m * power;
    return 10.0 * power;
}

void set_linear_ticks(Axis& axis, const Extent& extent, int most_ticks) {
    double low = extent.low, high = extent.high;
    // A remainder of 0 by rounding gets no step.
    const double rest = 1e-6 * std::max(std::abs(low), std::abs(high));
    if (std::abs(low) < rest) low = 0.0;
    if (std::abs(high) < rest) high = 0.0;
    if (high - low < 1e-12 * std::max(std::abs(low), std::abs(high)) || high == low) {
        const double half = low == 0.0 ? 0.5 : 0.05 * std::abs(low);
        low -= half, high += half;
    }
    for (double step = round_step((high - low) / (most_ticks - 1));; step = round_step(1.5 * step)) {
        const double first = std::floor(low / step + touch), last = std::ceil(high / step - touch);
        if (last - first + 1.0 > most_ticks) continue;
        axis.low = first * step, axis.high = last * step;
        for (double i = first; i <= last; i += 1.0) {
            axis.ticks.push_back(i * step);
            axis.numbers.push_back(tick_number(i * step, step));
        }
        return;
    }
}

// The numbers m 10^n of a range, with m among these.
std::vector<double> decade_ticks(double low, double high, const std::vector<double>& among) {
    std::vector<double> ticks;
    const int first = static_cast<int>(std::floor(std::log10(low) + touch)) - 1;
    const int last = static_cast<int>(std::ceil(std::log10(high) - touch));
    for (int n = first; n <= last; ++n)
        for (const double m : among) {
            const double value = m * std::pow(10.0, n);
            if (value >= low * (1.0 - touch) && value <= high * (1.0 + touch)) ticks.push_back(value);
        }
    return ticks;
}

void set_decade_ticks(Axis& axis, const Extent& extent, int most_ticks) {
    const double power = std::pow(10.0, std::floor(std::log10(extent.low) + touch));
    axis.low = power;
    for (const double m : {2.0, 5.0})
        if (m * power <= extent.low * (1.0 + touch)) axis.low = m * power;
    axis.high = round_step(std::max(extent.high, axis.low * 2.0));
    axis.ticks = decade_ticks(axis.low, axis.high, {1.0, 2.0, 5.0});
    if (static_cast<int>(axis.ticks.size()) > most_ticks)
        axis.ticks = decade_ticks(axis.low, axis.high, {1.0});
    while (static_cast<int>(axis.ticks.size()) > most_ticks) {  // every other power of ten
        std::vector<double> fewer;
        for (std::size_t i = 0; i < axis.ticks.size(); i += 2) fewer.push_back(axis.ticks[i]);
        axis.ticks = fewer;
    }
    for (const double t : axis.ticks) axis.numbers.push_back(tick_number(t, t));
}

}  // namespace

double Axis::part(double value) const {
    if (scale == Scale::linear) return (value - low) / (high - low);
    return std::log(value / low) / std::log(high / low);
}

void Extent::take_in(double value) {
    if (!std::isfinite(value)) return;
    low = std::min(low, value);
    high = std::max(high, value);
}

Extent nothing_yet() {
    return {1e300, -1e300};
}

Axis make_axis(const std::string& words, const Extent& extent, int most_ticks, Scale scale) {
    if (!(std::isfinite(extent.low) && std::isfinite(extent.high) && extent.low <= extent.high &&
          std::abs(extent.low) < 1e299))
        throw OutOfRange("range of the axis '" + words + "'", "not finite or empty",
                         "give at least one finite value");
    if (scale == Scale::logarithmic && !(extent.low > 0.0))
        throw OutOfRange("range of the axis '" + words + "'", tick_number(extent.low, 0.01),
                         "a logarithmic axis takes values above 0");
    Axis axis;
    axis.words = words;
    axis.scale = scale;
    const int most = std::max(3, most_ticks);
    scale == Scale::linear ? set_linear_ticks(axis, extent, most) : set_decade_ticks(axis, extent, most);
    return axis;
}

std::string tick_number(double value, double step) {
    const int decimals = std::max(0, static_cast<int>(std::ceil(-std::log10(step) - touch)));
    std::string digits = fixed(value, decimals);
    if (std::abs(value) < 9999.5) return digits;
    const std::size_t point = std::min(digits.find('.'), digits.size());
    const std::size_t first = digits.find_first_of("0123456789");
    for (std::size_t at = point; at > first + 3;) digits.insert(at -= 3, " ");
    return digits;
}

}  // namespace overbend::chart
