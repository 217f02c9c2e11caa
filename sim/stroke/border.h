// The few unknowns beside the strip's own, how far each spring is compressed, and what they share with it:
//
//   [ K  column ] [ nodes   ]     [ their gradient    ]
//   [ row corner] [ springs ] = - [ the springs' own  ]
//
// Units  mm, N per mm of width.

#pragma once

#include <Eigen/Core>
#include <vector>

#include "sim/stroke/band_solve.h"

namespace overbend::stroke {

struct Border {
    std::vector<std::vector<double>> column;  // how the nodes' gradient changes with each compression
    std::vector<std::vector<double>> row;     // how each one's gradient changes with the nodes' unknowns
    Eigen::MatrixXd corner;

    int count() const { return static_cast<int>(column.size()); }
    void resize(int springs, int node_unknowns);
    void clear();
};

// The whole system's solution for the right-hand side in `x`: the nodes' unknowns, then the springs'. In
// place. factors: of K. Returns false when the springs have no hold.
template <class Factors>
bool solve_bordered(const Factors& factors, const Border& border, std::vector<double>& x);

// Solves rest z = z in place. False when the determinant is not positive.
bool solve_rest(const Eigen::MatrixXd& rest, Eigen::VectorXd& z);

template <class Factors>
bool solve_bordered(const Factors& factors, const Border& border, std::vector<double>& x) {
    const int m = border.count(), n = static_cast<int>(x.size()) - m;
    std::vector<double> nodes(x.begin(), x.begin() + n);
    solve(factors, nodes);
    if (m == 0) {
        x.swap(nodes);
        return true;
    }
    Eigen::MatrixXd rest = border.corner;
    Eigen::VectorXd z(m);
    std::vector<std::vector<double>> answer = border.column;
    for (int j = 0; j < m; ++j) solve(factors, answer[j]);
    for (int i = 0; i < m; ++i) {
        z(i) = x[n + i];
        for (int k = 0; k < n; ++k) z(i) -= border.row[i][k] * nodes[k];
        for (int j = 0; j < m; ++j)
            for (int k = 0; k < n; ++k) rest(i, j) -= border.row[i][k] * answer[j][k];
    }
    if (!solve_rest(rest, z)) return false;
    for (int k = 0; k < n; ++k) {
        x[k] = nodes[k];
        for (int j = 0; j < m; ++j) x[k] -= answer[j][k] * z(j);
    }
    for (int i = 0; i < m; ++i) x[n + i] = z(i);
    return true;
}

}  // namespace overbend::stroke
