#include "render/drawing/general_tolerance.h"

#include "render/picture/numbers.h"
#include "sim/units.h"

namespace overbend::drawing {

using namespace picture;

namespace {

struct Row {
    double up_to;  // mm
    double either_way;
};

template <std::size_t count>
double row_of(const Row (&rows)[count], double size) {
    for (const Row& row : rows)
        if (size <= row.up_to) return row.either_way;
    return 0.0;
}

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

double length_tolerance(double length) {
    static constexpr Row rows[] = {{6.0, 0.1},    {30.0, 0.2},   {120.0, 0.3}, {400.0, 0.5},
                                   {1000.0, 0.8}, {2000.0, 1.2}, {4000.0, 2.0}};
    return length < 0.5 ? 0.0 : row_of(rows, length);
}

double radius_tolerance(double radius) {
    static constexpr Row rows[] = {{3.0, 0.2}, {6.0, 0.5}, {4000.0, 1.0}};
    return radius < 0.5 ? 0.0 : row_of(rows, radius);
}

double angle_tolerance(double shorter_leg) {
    static constexpr Row minutes[] = {{10.0, 60.0}, {50.0, 30.0}, {120.0, 20.0}, {400.0, 10.0}, {1e9, 5.0}};
    return row_of(minutes, shorter_leg) / 60.0 * pi / 180.0;
}

std::string length_words(double length, Tolerances tolerances) {
    return plain(length) + (tolerances == Tolerances::none ? "" : either_way(length_tolerance(length), ""));
}

std::string radius_words(double radius, int count, Tolerances tolerances) {
    return (count > 1 ? std::to_string(count) + "\u00d7 R" : "R") + plain(radius) +
           (tolerances == Tolerances::none ? "" : either_way(radius_tolerance(radius), ""));
}

std::string angle_words(double angle, double shorter_leg, Tolerances tolerances) {
    const double tolerance = angle_tolerance(shorter_leg);
    return plain(angle / degree) + "\u00b0" +
           (tolerances == Tolerances::none ? "" : either_way(tolerance / degree, "\u00b0"));
}

std::string tolerances_words(Tolerances tolerances) {
    return tolerances == Tolerances::none ? "not stated" : "ISO 2768-m";
}

}  // namespace overbend::drawing
