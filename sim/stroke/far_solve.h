// Linear equations of a strip that touches itself: a band matrix, and blocks beside it that couple nodes far
// from one another along the strip. Solved by Eigen's sparse LU factors.

#pragma once

#include <Eigen/SparseLU>
#include <vector>

#include "sim/stroke/band_solve.h"
#include "sim/stroke/self_contact.h"

namespace overbend::stroke {

class FarFactors {
  public:
    // The band matrix as it was summed up, not factored. Returns false when it has no inverse.
    bool factor(BandMatrix& band, const std::vector<FarBlock>& far);
    const Eigen::SparseLU<Eigen::SparseMatrix<double>>& factors() const { return factors_; }

  private:
    Eigen::SparseMatrix<double> matrix_;
    Eigen::SparseLU<Eigen::SparseMatrix<double>> factors_;
};

// Solves with the factors, in place.
void solve(const FarFactors& factors, std::vector<double>& b);

}  // namespace overbend::stroke
