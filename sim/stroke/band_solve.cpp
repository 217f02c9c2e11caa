#include "sim/stroke/band_solve.h"

#include <algorithm>

namespace overbend::stroke {

bool factor(BandMatrix& a, double least) {
    a.close_reach();
    return band_kernels().factor(a.rows(), a.reach().data(), a.size(), least);
}

void solve(const BandMatrix& f, std::vector<double>& b) {
    std::vector<double> x(f.size() + 2 * band_reach, 0.0);
    std::copy(b.begin(), b.begin() + f.size(), x.begin() + band_reach);
    band_kernels().solve(f.rows(), f.size(), x.data() + band_reach);
    std::copy_n(x.begin() + band_reach, f.size(), b.begin());
}

}  // namespace overbend::stroke
