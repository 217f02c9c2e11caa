// Sobol's points: the first ones, how evenly they lie, and that a point is the same wherever it is drawn.

#include <doctest/doctest.h>

#include <cmath>
#include <set>

#include "scenes/job/study/sobol_points.h"
#include "sim/errors.h"

using namespace overbend;
using overbend::job::sobol_point;

TEST_CASE("points of a study: any one is the same in any order") {
    const std::vector<double> seventh = sobol_point(12, 7, 1);
    for (const std::uint64_t other : {1000u, 3u, 8u, 0u}) sobol_point(12, other, 1);
    sobol_point(3, 5, 1);
    CHECK(sobol_point(12, 7, 1) == seventh);
    CHECK(sobol_point(12, 7, 2) != seventh);
    // The first dimensions of a point do not depend on how many there are.
    CHECK(sobol_point(2, 7, 1)[1] == seventh[1]);
}

// The defining property of the sequence, which a digital shift keeps: of the first 2^m points, each interval
// of length 2^-m has one in every dimension (I. M. Sobol, USSR Comput. Math. Math. Phys. 7 (1967) 86-112).
TEST_CASE("points of a study: every interval of the first 256 has one point in each dimension") {
    for (const int series : {1, 9}) {
        std::vector<std::set<int>> seen(20);
        for (std::uint64_t k = 0; k < 256; ++k) {
            const std::vector<double> point = sobol_point(20, k, series);
            for (std::size_t d = 0; d < 20; ++d) {
                REQUIRE(point[d] > 0.0);
                REQUIRE(point[d] < 1.0);
                seen[d].insert(static_cast<int>(256.0 * point[d]));
            }
        }
        for (const std::set<int>& intervals : seen) CHECK(intervals.size() == 256);
    }
}

// The first two dimensions of the first 2^m points lie one in each box of 2^-a x 2^-(m - a): a (0, m, 2) net,
// for these direction numbers too (property t = 0 of Sobol's first two dimensions).
TEST_CASE("points of a study: the first two dimensions are a net without gaps") {
    for (const int a : {2, 4, 6}) {
        std::set<std::pair<int, int>> boxes;
        for (std::uint64_t k = 0; k < 256; ++k) {
            const std::vector<double> p = sobol_point(2, k, 1);
            boxes.insert({static_cast<int>(p[0] * (1 << a)), static_cast<int>(p[1] * (1 << (8 - a)))});
        }
        CHECK(boxes.size() == 256);
    }
}

// Integral of a product of |4 x - 2| over 8 dimensions is 1. Points by chance are some 0.05 off with 4096
// (standard error sqrt((4/3)^8 - 1) / 64); allowed 0.02, measured 0.014.
TEST_CASE("points of a study: an integral over eight dimensions") {
    double sum = 0.0;
    for (std::uint64_t k = 0; k < 4096; ++k) {
        double product = 1.0;
        for (const double x : sobol_point(8, k, 1)) product *= std::abs(4.0 * x - 2.0);
        sum += product / 4096.0;
    }
    CHECK(std::abs(sum - 1.0) < 0.02);
    MESSAGE("off by ", sum - 1.0);
}

TEST_CASE("points of a study: dimensions that cannot be") {
    CHECK_THROWS_AS(sobol_point(0, 1, 1), OutOfRange);
    CHECK_THROWS_AS(sobol_point(job::most_dimensions + 1, 1, 1), OutOfRange);
}
