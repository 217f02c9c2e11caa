// Distributions: quantile, density and mean against one another and against closed forms.

#include <doctest/doctest.h>

#include <cmath>

#include "scenes/job/study/distribution.h"

using namespace overbend;
using namespace overbend::files;

namespace {

const std::vector<Distribution>& all() {
    static const std::vector<Distribution> list = {
        Normal{1.2, 0.02},
        Normal{1.2, 0.02, 0.03},
        Uniform{-1.0, 3.0},
        Triangular{0.0, 1.0, 4.0},
        Triangular{0.0, 0.0, 4.0},
        Triangular{0.0, 4.0, 4.0},
        DensityTable{{0.0, 1.0, 2.0, 5.0}, {0.0, 3.0, 3.0, 1.0}},
        DensityTable{{0.0, 1.0, 2.0}, {2.0, 0.0, 2.0}},
    };
    return list;
}

}  // namespace

// Tables of the normal distribution: 97.5 per cent lie below 1.959964 deviations, 84.1345 per cent below 1.
TEST_CASE("distributions: the normal one") {
    CHECK(job::normal_quantile(0.975) == doctest::Approx(1.959963985).epsilon(1e-9));
    CHECK(job::normal_quantile(0.025) == doctest::Approx(-1.959963985).epsilon(1e-9));
    CHECK(std::abs(job::normal_quantile(0.5)) < 1e-12);
    CHECK(job::normal_share(1.0) == doctest::Approx(0.8413447461).epsilon(1e-9));
}

// The area below the density between two quantiles is the difference of their shares, by Simpson's rule.
// Allowed 1e-4 (corners of the tables).
TEST_CASE("distributions: quantiles and densities say the same") {
    for (std::size_t i = 0; i < all().size(); ++i) {
        CAPTURE(i);
        for (double share = 0.05; share < 0.94; share += 0.1) {
            const double a = job::quantile(all()[i], share), b = job::quantile(all()[i], share + 0.1);
            REQUIRE(b > a);
            double area = 0.0;
            constexpr int parts = 2000;
            for (int k = 0; k < parts; ++k) {
                const double x = a + (b - a) * k / parts, h = (b - a) / parts;
                area += h / 6.0 *
                        (job::density(all()[i], x) + 4.0 * job::density(all()[i], x + 0.5 * h) +
                         job::density(all()[i], x + h));
            }
            CHECK(std::abs(area - 0.1) < 1e-4);
        }
    }
}

TEST_CASE("distributions: the mean is that of many quantiles") {
    for (std::size_t i = 0; i < all().size(); ++i) {
        CAPTURE(i);
        double sum = 0.0;
        constexpr int count = 20000;
        for (int k = 0; k < count; ++k) sum += job::quantile(all()[i], (k + 0.5) / count) / count;
        CHECK(std::abs(sum - job::mean_of(all()[i])) < 1e-3);
    }
}

TEST_CASE("distributions: nothing lies outside") {
    CHECK(job::density(Normal{0.0, 1.0, 2.0}, 2.1) == 0.0);
    CHECK(std::abs(job::quantile(Normal{0.0, 1.0, 2.0}, 1e-12) + 2.0) < 1e-6);
    CHECK(job::density(Uniform{0.0, 1.0}, 1.1) == 0.0);
    CHECK(job::density(Triangular{0.0, 1.0, 2.0}, -0.1) == 0.0);
    CHECK(job::density(DensityTable{{0.0, 1.0}, {1.0, 1.0}}, 2.0) == 0.0);
}
