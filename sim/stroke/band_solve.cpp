#include "sim/stroke/band_solve.h"

#include <cmath>

namespace overbend::stroke {

bool factor(BandMatrix& a, double least) {
    a.close_reach();
    const int n = a.size();
    for (int k = 0; k < n; ++k) {
        const double pivot = a.at(k, k);
        if (!(pivot > least)) return false;
        const double inverse = 1.0 / pivot;
        const int last = a.reach()[k];
        const double* upper = &a.at(k, k);
        for (int i = k + 1; i <= last; ++i) {
            double* target = &a.at(i, k);
            const double share = target[0] * inverse;
            target[0] = share;
            for (int j = 1; j <= last - k; ++j) target[j] -= share * upper[j];
        }
    }
    return true;
}

void solve(const BandMatrix& f, std::vector<double>& b) {
    const int n = f.size();
    const std::vector<int>& reach = f.reach();
    int low = 0;  // the first unknown that reaches i
    for (int i = 0; i < n; ++i) {
        while (reach[low] < i) ++low;
        double sum = b[i];
        for (int j = low; j < i; ++j) sum -= f.at(i, j) * b[j];
        b[i] = sum;
    }
    for (int i = n - 1; i >= 0; --i) {
        double sum = b[i];
        for (int j = i + 1; j <= reach[i]; ++j) sum -= f.at(i, j) * b[j];
        b[i] = sum / f.at(i, i);
    }
}

}  // namespace overbend::stroke
