#include "sim/shop/spring_pad.h"

#include <algorithm>
#include <cmath>

#include "sim/errors.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::shop {

namespace {

constexpr double steel = 7.85e-3;  // g/mm3
constexpr double least_index = 4.0, most_index = 12.0, index_step = 0.5;
constexpr double least_turns = 2.0, most_turns = 25.0;  // that work

void check(const SpringRequest& request) {
    if (!(request.force_start >= 0.0 && request.force_end > request.force_start &&
          std::isfinite(request.force_end)))
        throw OutOfRange("spring's forces",
                         words("from %g to %g N cannot be", request.force_start, request.force_end),
                         "give 0 N or more at the start, and more than that at the end");
    if (!(request.travel > 0.0 && std::isfinite(request.travel)))
        throw OutOfRange("spring's travel", words("%g mm cannot be", request.travel), "give more than 0 mm");
}

bool does(const ChosenSpring& s, const SpringRequest& request) {
    return s.spring.turns >= least_turns && s.spring.turns <= most_turns && s.force_start >= 0.0 &&
           s.stress <= s.allowed_stress && s.slenderness < buckles_from &&
           s.spring.coil_diameter + s.spring.wire <= request.most_outside &&
           s.installed_length <= request.most_length;
}

std::vector<double> indices(const SpringRequest& request) {
    if (request.index) return {*request.index};
    std::vector<double> all;
    for (double index = least_index; index <= most_index; index += index_step) all.push_back(index);
    return all;
}

}  // namespace

double SpringWire::strength(double diameter) const {
    return A / std::pow(diameter, m);
}

const std::vector<SpringWire>& spring_wires() {
    static const std::vector<SpringWire> wires = {
        {"music wire, patented cold drawn", 2211.0, 0.145, 0.5, 6.3, 81700.0, 0.45},
        {"oil-tempered wire", 1855.0, 0.187, 0.5, 12.5, 77200.0, 0.50}};
    return wires;
}

const std::vector<double>& wire_series() {
    static const std::vector<double> series = {0.5, 0.56, 0.63, 0.7,  0.8, 0.9, 1.0,  1.1,  1.25, 1.4,
                                               1.6, 1.8,  2.0,  2.25, 2.5, 2.8, 3.2,  3.6,  4.0,  4.5,
                                               5.0, 5.6,  6.3,  7.0,  8.0, 9.0, 10.0, 11.0, 12.5};
    return series;
}

double wahl_factor(double index) {
    return (4.0 * index - 1.0) / (4.0 * index - 4.0) + 0.615 / index;
}

double shear_stress(const tool::HelicalSpring& s, double force) {
    return 8.0 * force * s.coil_diameter * wahl_factor(s.coil_diameter / s.wire) /
           (pi * s.wire * s.wire * s.wire);
}

ChosenSpring spring_at_work(const tool::HelicalSpring& spring, const SpringWire& wire, double force_end,
                            double travel, std::optional<double> gap) {
    const double d = spring.wire, D = spring.coil_diameter, n = spring.turns;
    ChosenSpring s;
    s.wire = wire.name;
    s.spring = spring;
    s.rate = tool::spring_rate(spring);
    s.total_turns = n + 2.0;
    s.solid_length = s.total_turns * d;
    const double gaps = gap ? *gap * (s.total_turns - 1.0) : n * (0.0015 * D * D / d + 0.1 * d);
    s.force_end = force_end;
    s.force_start = force_end - s.rate * travel;
    s.free_length = s.solid_length + gaps + force_end / s.rate;
    s.installed_length = s.solid_length + gaps + travel;
    s.pitch = s.free_length / (s.total_turns - 1.0);
    s.stress = shear_stress(spring, force_end);
    s.allowed_stress = wire.allowed * wire.strength(d);
    s.slenderness = s.free_length / D;
    s.mass = steel * 0.25 * pi * d * d * pi * D * s.total_turns;
    return s;
}

ChosenSpring spring_of(const SpringRequest& request, const SpringWire& wire, double diameter,
                       double coil_diameter) {
    check(request);
    tool::HelicalSpring spring{diameter, coil_diameter, 1.0, wire.shear_modulus};
    // A turn alone is this stiff; more turns share the wanted rate, rounded up to half ones.
    const double wanted = (request.force_end - request.force_start) / request.travel;
    spring.turns = std::ceil(2.0 * tool::spring_rate(spring) / wanted - 1e-9) / 2.0;
    return spring_at_work(spring, wire, request.force_end, request.travel, request.gap);
}

std::optional<ChosenSpring> choose_spring(const SpringRequest& request) {
    check(request);
    std::optional<ChosenSpring> lightest;
    for (const SpringWire& wire : spring_wires())
        for (const double d : wire_series()) {
            if (d < wire.least || d > wire.most) continue;
            for (const double index : indices(request)) {
                const ChosenSpring s = spring_of(request, wire, d, index * d);
                if (does(s, request) && (!lightest || s.mass < lightest->mass)) lightest = s;
            }
        }
    return lightest;
}

SpringRows spring_rows(int count, double width, double length) {
    SpringRows best;
    for (int rows = 1; rows <= count; ++rows) {
        if (count % rows != 0) continue;
        const int in_a_row = count / rows;
        const double each = std::min(width / in_a_row, length / rows);
        if (each > best.each + 1e-9) best = {in_a_row, rows, each};
    }
    return best;
}

}  // namespace overbend::shop
