#include "render/drawing/sizes_in_words.h"

#include "render/picture/numbers.h"
#include "sim/plan/general_tolerance.h"
#include "sim/units.h"

namespace overbend::drawing {

using namespace picture;

namespace {

// Up to three decimals, without zeros at the end.
std::string plain(double value) {
    std::string text = fixed(value, 3);
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
    return text;
}

std::string either_way(double tolerance, const char* unit) {
    return tolerance > 0.0 ? " \u00b1" + plain(tolerance) + unit : "";
}

}  // namespace

std::string length_words(double length, Tolerances tolerances) {
    return plain(length) +
           (tolerances == Tolerances::none ? "" : either_way(plan::length_tolerance(length), ""));
}

std::string radius_words(double radius, int count, Tolerances tolerances) {
    return (count > 1 ? std::to_string(count) + "\u00d7 R" : "R") + plain(radius) +
           (tolerances == Tolerances::none ? "" : either_way(plan::radius_tolerance(radius), ""));
}

std::string angle_words(double angle, double shorter_leg, Tolerances tolerances) {
    const double tolerance = plan::angle_tolerance(shorter_leg);
    return plain(angle / degree) + "\u00b0" +
           (tolerances == Tolerances::none ? "" : either_way(tolerance / degree, "\u00b0"));
}

std::string tolerances_words(Tolerances tolerances) {
    return tolerances == Tolerances::none ? "not stated" : "ISO 2768-m";
}

}  // namespace overbend::drawing
