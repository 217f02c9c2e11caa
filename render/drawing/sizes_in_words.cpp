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

std::string with(const Allowed& allowed, const std::string& size, double either_way, const char* unit) {
    if (allowed.reference) return "(" + size + ")";
    return either_way > 0.0 ? size + " \u00b1" + plain(either_way) + unit : size;
}

Allowed general(Tolerances tolerances, double either_way) {
    return {tolerances == Tolerances::none ? 0.0 : either_way};
}

}  // namespace

std::string length_words(double length, const Allowed& allowed) {
    return with(allowed, plain(length), allowed.either_way, "");
}
std::string length_words(double length, Tolerances tolerances) {
    return length_words(length, general(tolerances, plan::length_tolerance(length)));
}

std::string radius_words(double radius, int count, const Allowed& allowed) {
    return with(allowed, (count > 1 ? std::to_string(count) + "\u00d7 R" : "R") + plain(radius),
                allowed.either_way, "");
}
std::string radius_words(double radius, int count, Tolerances tolerances) {
    return radius_words(radius, count, general(tolerances, plan::radius_tolerance(radius)));
}

std::string angle_words(double angle, const Allowed& allowed) {
    return with(allowed, plain(angle / degree) + "\u00b0", allowed.either_way / degree, "\u00b0");
}
std::string angle_words(double angle, double shorter_leg, Tolerances tolerances) {
    return angle_words(angle, general(tolerances, plan::angle_tolerance(shorter_leg)));
}

std::string tolerances_words(Tolerances tolerances) {
    return tolerances == Tolerances::none ? "not stated" : "ISO 2768-m";
}

}  // namespace overbend::drawing
