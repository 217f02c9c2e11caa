#include "sim/plan/general_tolerance.h"

#include <cstddef>

#include "sim/units.h"

namespace overbend::plan {

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
    return row_of(minutes, shorter_leg) / 60.0 * degree;
}

}  // namespace overbend::plan
