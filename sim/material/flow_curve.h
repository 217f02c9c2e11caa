// Flow stress over accumulated plastic strain, with its slope and its integral, fast enough for the
// innermost loop of the solver.
//
// Smooth laws (Swift, Hollomon, Voce) are tabulated once: cubic Hermite pieces, sixteen to every doubling
// of p + 1e-4, so that the table is as fine near p = 0 as the law is curved there. Against the law itself
// the stress is good to 1e-7. Slope and integral are the pieces' own derivative and integral, so energy,
// stress and tangent agree exactly. Linear and table laws are straight pieces and exact.
//
// Units  MPa; p without unit, >= 0.

#pragma once

#include <cstdint>
#include <cstring>
#include <vector>

#include "sim/material/card.h"

namespace overbend::material {

struct FlowPoint {
    double stress = 0.0;  // MPa, uniaxial flow stress
    double slope = 0.0;   // MPa, d stress / d p
    double work = 0.0;    // MPa, integral of the stress from 0 to p: plastic work per volume
};

// The law itself, from the card: the reference for the table, and for everything that is not hot.
// youngs_modulus is needed for Hollomon's law alone (its yield point).
FlowPoint flow_point(const Hardening& hardening, double youngs_modulus, double p);

class FlowCurve {
  public:
    FlowCurve() = default;
    FlowCurve(const Hardening& hardening, double youngs_modulus);

    double first_yield() const { return first_yield_; }  // MPa, at p = 0

    // p >= 0. Smooth laws go on straight beyond p = 16.
    FlowPoint at(double p) const { return smooth_ ? cubic_at(p) : straight_at(p); }

    struct Cubic {
        double c0 = 0.0, c1 = 0.0, c2 = 0.0, c3 = 0.0;  // stress = c0 + u (c1 + u (c2 + u c3)), u in [0, 1)
        double over = 1.0, work = 0.0, width = 1.0;     // 1/width of the cell; integral up to its start
        double spare = 0.0;
    };
    // The table of smooth laws, empty for others: cell i is that of the p whose p + shift has the leading
    // bits first_cell() + i.
    const std::vector<Cubic>& cells() const { return cells_; }
    std::uint64_t first_cell() const { return base_; }
    static constexpr double shift = 1e-4;  // keeps the first cell away from 0
    static constexpr int cell_bits = 48;   // the four highest bits of the mantissa number the cell

  private:
    static std::uint64_t bits_of(double v) {
        std::uint64_t b = 0;
        std::memcpy(&b, &v, sizeof b);
        return b;
    }
    FlowPoint cubic_at(double p) const {
        const double v = p + shift;
        const std::uint64_t bits = bits_of(v);
        std::size_t i = static_cast<std::size_t>((bits >> cell_bits) - base_);
        if (i >= cells_.size()) return beyond(p);
        const std::uint64_t floor_bits = bits & ~((std::uint64_t{1} << cell_bits) - 1);
        double floor_v = 0.0;
        std::memcpy(&floor_v, &floor_bits, sizeof floor_v);
        const Cubic& c = cells_[i];
        const double u = (v - floor_v) * c.over;  // the widths are powers of 2
        FlowPoint f;
        f.stress = c.c0 + u * (c.c1 + u * (c.c2 + u * c.c3));
        f.slope = (c.c1 + u * (2.0 * c.c2 + 3.0 * u * c.c3)) * c.over;
        f.work = c.work + c.width * u * (c.c0 + u * (c.c1 / 2.0 + u * (c.c2 / 3.0 + u * c.c3 / 4.0)));
        return f;
    }
    FlowPoint straight_at(double p) const;
    FlowPoint beyond(double p) const;

    bool smooth_ = false;
    double first_yield_ = 0.0;
    std::uint64_t base_ = 0;
    std::vector<Cubic> cells_;
    FlowPoint last_;  // at the end of the table
    double last_p_ = 0.0;
    std::vector<double> knot_, knot_stress_, knot_slope_, knot_work_;  // of the straight pieces
};

}  // namespace overbend::material
