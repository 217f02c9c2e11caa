// The kernels of the band matrix: against Eigen's dense solution, and the same bytes on every instruction
// set.
//
// Here    random matrices and blocks from a fixed seed. Allowed 1e-12 of the solution.

#include <doctest/doctest.h>

#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <vector>

#include "sim/stroke/band_solve.h"
#include "sim/stroke/strain_kernels.h"

using namespace overbend;

namespace {

class Random {
  public:
    double next() {  // -1 to 1
        state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
        return static_cast<double>(state_ >> 11) / 4503599627370496.0 - 1.0;
    }

  private:
    unsigned long long state_ = 777;
};

constexpr int size = 60;

stroke::BandMatrix random_band(Random& random) {
    stroke::BandMatrix a;
    a.resize(size);
    for (int i = 0; i < size; ++i) {
        const int last = std::min(size - 1, i + 3 + (7 * i) % (stroke::BandMatrix::half - 2));
        a.join(i, last);
        a.at(i, i) = 40.0;
        for (int j = i + 1; j <= last; ++j) a.at(i, j) = random.next(), a.at(j, i) = random.next();
    }
    return a;
}

}  // namespace

TEST_SUITE("stroke") {
    TEST_CASE("a band matrix is solved as a dense one is, with the same bytes on every instruction set") {
        Random random;
        stroke::BandMatrix a = random_band(random);
        Eigen::MatrixXd dense = Eigen::MatrixXd::Zero(size, size);
        for (int i = 0; i < size; ++i)
            for (int j = std::max(0, i - stroke::BandMatrix::half);
                 j <= std::min(size - 1, i + stroke::BandMatrix::half); ++j)
                dense(i, j) = a.at(i, j);
        std::vector<double> b(size);
        for (double& x : b) x = random.next();
        const Eigen::VectorXd wanted =
            dense.fullPivLu().solve(Eigen::Map<const Eigen::VectorXd>(b.data(), size));

        a.close_reach();
        const auto solved = [&](const stroke::BandKernels& kernels) {
            stroke::BandMatrix factors = a;
            REQUIRE(kernels.factor(factors.rows(), factors.reach().data(), size, 1e-6));
            std::vector<double> x(size + 2 * stroke::band_reach, 0.0);
            std::copy(b.begin(), b.end(), x.begin() + stroke::band_reach);
            kernels.solve(factors.rows(), size, x.data() + stroke::band_reach);
            return x;
        };
        const std::vector<double> x = solved(stroke::band_kernels_sse2());
        for (int i = 0; i < size; ++i) CHECK(std::abs(x[stroke::band_reach + i] - wanted(i)) < 1e-12);
        if (material::has_avx2()) CHECK(solved(stroke::band_kernels_avx2()) == x);
    }

    TEST_CASE("a matrix without hold in some direction has no factors") {
        Random random;
        stroke::BandMatrix a = random_band(random);
        a.at(30, 30) = -1.0;
        CHECK_FALSE(stroke::factor(a, 1e-6));
    }

    TEST_CASE("strains come to the unknowns with the same bytes on every instruction set") {
        if (!material::has_avx2()) return;
        Random random;
        const stroke::ElementChange here{std::cos(0.4), std::sin(0.4), 1.02, 0.03, 8.0};
        const stroke::ElementChange next{std::cos(0.5), std::sin(0.5), 0.98, -0.02, 6.0};
        double H[stroke::pair_strains * stroke::pair_strains], K[64], by_y1[20], by_y2[20];
        for (double& x : H) x = random.next();
        for (double& x : K) x = random.next();
        for (int i = 0; i < 20; ++i) by_y1[i] = random.next(), by_y2[i] = random.next();
        const auto added = [&](const stroke::StrainKernels& kernels) {
            stroke::BandMatrix a;
            a.resize(size);
            kernels.add_own(here, H, 3.0, -2.0, a.rows(), 10);
            kernels.add_pair(here, next, H, a.rows(), 10, 15);
            kernels.add_pair(here, next, H, a.rows(), 10, 20);
            kernels.add_face(K, by_y1, by_y2, a.rows(), 5);
            return std::vector<double>(a.rows(), a.rows() + size * stroke::band_row);
        };
        CHECK(added(stroke::strain_kernels_sse2()) == added(stroke::strain_kernels_avx2()));
    }

}  // TEST_SUITE
