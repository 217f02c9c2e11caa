#include "sim/stroke/far_solve.h"

namespace overbend::stroke {

bool FarFactors::factor(BandMatrix& band, const std::vector<FarBlock>& far) {
    band.close_reach();
    const int size = band.size();
    std::vector<Eigen::Triplet<double>> entries;
    for (int i = 0; i < size; ++i) {
        entries.emplace_back(i, i, band.at(i, i));
        for (int j = i + 1; j <= band.reach()[i]; ++j) {
            entries.emplace_back(i, j, band.at(i, j));
            entries.emplace_back(j, i, band.at(j, i));
        }
    }
    for (const FarBlock& block : far) {
        const int row = strip::node_unknowns * (block.row_element - 1),
                  column = strip::node_unknowns * (block.column_element - 1);
        for (int i = 0; i < around; ++i)
            for (int j = 0; j < around; ++j)
                if (block.K(i, j) != 0.0) entries.emplace_back(row + i, column + j, block.K(i, j));
    }
    matrix_.resize(size, size);
    matrix_.setFromTriplets(entries.begin(), entries.end());
    factors_.compute(matrix_);
    return factors_.info() == Eigen::Success;
}

void solve(const FarFactors& factors, std::vector<double>& b) {
    const Eigen::Map<const Eigen::VectorXd> right(b.data(), static_cast<long>(b.size()));
    const Eigen::VectorXd x = factors.factors().solve(right);
    for (std::size_t i = 0; i < b.size(); ++i) b[i] = x(static_cast<long>(i));
}

}  // namespace overbend::stroke
