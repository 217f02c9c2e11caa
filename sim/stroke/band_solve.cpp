#include "sim/stroke/band_solve.h"

#include <Eigen/Core>
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
