#include "sim/stroke/band_solve.h"

#include <Eigen/Core>
#include <algorithm>

namespace overbend::stroke {

bool factor(BandMatrix& a, double least) {
    a.close_reach();
    const int n = a.size();
    for (int k = 0; k < n; ++k) {
        const double pivot = a.at(k, k);
        if (!(pivot > least)) return false;
        const double inverse = 1.0 / pivot;
        const int last = a.reach()[k];
        // To the band's end, beyond what hangs together too, where all is 0: a fixed count is quicker.
        using Upper = Eigen::Map<Eigen::Array<double, BandMatrix::half + 1, 1>>;
        const Upper upper(&a.at(k, k));
        for (int i = k + 1; i <= last; ++i) {
            Upper target(&a.at(i, k));
            const double share = target(0) * inverse;
            target -= share * upper;
            target(0) = share;
        }
    }
    return true;
}

void solve(const BandMatrix& f, std::vector<double>& b) {
    constexpr int half = BandMatrix::half;
    using Row = Eigen::Matrix<double, half, 1>;
    // With zeros on both sides, so that every row is multiplied whole.
    const int n = f.size();
    std::vector<double> x(n + 2 * half, 0.0);
    std::copy(b.begin(), b.begin() + n, x.begin() + half);
    for (int i = 0; i < n; ++i) {
        const double* row = &f.at(i, i - half);
        x[half + i] -= Eigen::Map<const Row>(row).dot(Eigen::Map<const Row>(&x[i]));
    }
    for (int i = n - 1; i >= 0; --i) {
        const double* row = &f.at(i, i);
        const double sum = Eigen::Map<const Row>(row + 1).dot(Eigen::Map<const Row>(&x[half + i + 1]));
        x[half + i] = (x[half + i] - sum) / row[0];
    }
    std::copy(x.begin() + half, x.begin() + half + n, b.begin());
}

}  // namespace overbend::stroke
