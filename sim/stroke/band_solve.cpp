#include "sim/stroke/band_solve.h"

#include <cmath>

namespace overbend::stroke {

bool factor(BandMatrix& a, double least) {
    const int n = a.size();
    for (int k = 0; k < n; ++k) {
        const double pivot = a.at(k, k);
        if (!(pivot > least)) return false;
        const double inverse = 1.0 / pivot;
        const int last = std::min(n - 1, k + BandMatrix::half);
        const double* upper = &a.at(k, k);
        for (int i = k + 1; i <= last; ++i) {
            double* target = &a.at(i, k);
            const double share = target[0] * inverse;
            target[0] = share;
            if (share == 0.0) continue;
            for (int j = 1; j <= last - k; ++j) target[j] -= share * upper[j];
        }
    }
    return true;
}

void solve(const BandMatrix& f, std::vector<double>& b) {
    const int n = f.size();
    for (int i = 0; i < n; ++i)
        for (int j = std::max(0, i - BandMatrix::half); j < i; ++j) b[i] -= f.at(i, j) * b[j];
    for (int i = n - 1; i >= 0; --i) {
        for (int j = i + 1; j <= std::min(n - 1, i + BandMatrix::half); ++j) b[i] -= f.at(i, j) * b[j];
        b[i] /= f.at(i, i);
    }
}

}  // namespace overbend::stroke
