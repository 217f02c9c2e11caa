// A term of an increment's energy against central differences.

#pragma once

#include <Eigen/Core>
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <vector>

#include "sim/stroke/equations.h"

namespace overbend::tests {

// A term at one set of unknowns.
struct Evaluated {
    double energy = 0.0;
    Eigen::VectorXd gradient;
    Eigen::MatrixXd hessian;
};

// What a term has added to equations that were clear before.
inline Evaluated evaluated(double energy, const stroke::Equations& e) {
    const int nodes = e.matrix.size(), size = static_cast<int>(e.gradient.size());
    Evaluated all{energy, Eigen::Map<const Eigen::VectorXd>(e.gradient.data(), size),
                  Eigen::MatrixXd(size, size)};
    for (int i = 0; i < size; ++i)
        for (int j = 0; j < size; ++j) {
            const int row = i - nodes, column = j - nodes;  // among the springs, where not below 0
            all.hessian(i, j) = row >= 0 && column >= 0                      ? e.border.corner(row, column)
                                : row >= 0                                   ? e.border.row[row][j]
                                : column >= 0                                ? e.border.column[column][i]
                                : std::abs(i - j) > stroke::BandMatrix::half ? 0.0
                                                                             : e.matrix.at(i, j);
        }
    return all;
}

// Largest errors over the largest entry.
struct DifferenceErrors {
    double gradient = 0.0, hessian = 0.0;
    double largest_gradient = 0.0, largest_hessian = 0.0;
};

// term(u) gives what is Evaluated there. step: mm and rad.
template <class Term>
DifferenceErrors by_differences(const char* name, const std::vector<double>& u, double step,
                                const Term& term) {
    const Evaluated here = term(u);
    DifferenceErrors found;
    found.largest_gradient = here.gradient.cwiseAbs().maxCoeff();
    found.largest_hessian = here.hessian.cwiseAbs().maxCoeff();
    for (int j = 0; j < static_cast<int>(u.size()); ++j) {
        std::vector<double> a = u, b = u;
        a[j] -= step, b[j] += step;
        const Evaluated below = term(a), above = term(b);
        const double slope = (above.energy - below.energy) / (2.0 * step);
        const Eigen::VectorXd column = (above.gradient - below.gradient) / (2.0 * step);
        found.gradient = std::max(found.gradient, std::abs(slope - here.gradient(j)));
        found.hessian = std::max(found.hessian, (column - here.hessian.col(j)).cwiseAbs().maxCoeff());
    }
    if (found.largest_gradient > 0.0) found.gradient /= found.largest_gradient;
    if (found.largest_hessian > 0.0) found.hessian /= found.largest_hessian;
    std::printf("%s: gradient %.1e, hessian %.1e of the largest\n", name, found.gradient, found.hessian);
    return found;
}

}  // namespace overbend::tests
