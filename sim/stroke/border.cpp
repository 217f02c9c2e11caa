#include "sim/stroke/border.h"

#include <Eigen/LU>
#include <algorithm>

namespace overbend::stroke {

void Border::resize(int springs, int node_unknowns) {
    column.assign(springs, std::vector<double>(node_unknowns, 0.0));
    row = column;
    corner = Eigen::MatrixXd::Zero(springs, springs);
}

void Border::clear() {
    for (auto* side : {&column, &row})
        for (std::vector<double>& one : *side) std::fill(one.begin(), one.end(), 0.0);
    corner.setZero();
}

bool solve_rest(const Eigen::MatrixXd& rest, Eigen::VectorXd& z) {
    const Eigen::FullPivLU<Eigen::MatrixXd> factors(rest);
    if (!(factors.determinant() > 0.0)) return false;
    z = factors.solve(z).eval();
    return true;
}

}  // namespace overbend::stroke
