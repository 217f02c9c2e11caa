// The shape of a warped section: against the differential equation that it solves to the first order in the
// warp's gradients, and its derivatives against central differences.

#include "sim/material/section_shape.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "sim/material/section.h"

using namespace overbend;
using material::SectionStrain;

namespace {

constexpr double t = 1.3;

// lambda^2 and the height of what is at z, by the equation itself:
// d(lambda^2)/dz = - 2 k + 2 lambda (L_1 c_1 + L_2 c_2), dy/dz = 1/lambda, in steps of the midpoint rule.
struct Integrated {
    double square = 0.0, height = 0.0;
};
Integrated integrated(const SectionStrain& E, double z) {
    const auto slope = [&](double at) {
        const double x = 2.0 * at / t;
        return x * E(2) + 0.5 * (3.0 * x * x - 1.0) * E(3);
    };
    // psi_1(0) = - t/4, psi_2(0) = 0.
    const double first = E(0) - 0.25 * t * E(2);
    Integrated at{first * first, 0.0};
    constexpr int steps = 20000;
    const double dz = z / steps;
    for (int i = 0; i < steps; ++i) {
        const auto rate = [&](double place, double square) {
            return -2.0 * E(1) + 2.0 * std::sqrt(square) * slope(place);
        };
        const double half = at.square + 0.5 * dz * rate(i * dz, at.square);
        at.height += dz / std::sqrt(half);
        at.square += dz * rate((i + 0.5) * dz, half);
    }
    return at;
}

}  // namespace

TEST_SUITE("material") {
    // Allowed: the square of the gradients, whose own share is left out, and 1e-4 of the height for five
    // points.
    TEST_CASE(
        "a warped section's stretches and heights solve their equation to the first order in the warp") {
        const material::SectionShape shape(material::gauss_layers(t, 9));
        for (const double k : {0.0, 0.3, -0.6}) {
            for (const double c : {0.01, 0.04}) {
                const SectionStrain E(1.05, k, c, -1.5 * c);
                material::LayerSquare squares[material::most_layers];
                REQUIRE(shape.squares(E, squares));
                material::LayerHeights heights;
                REQUIRE(shape.heights(E, heights));
                double off = 0.0, off_height = 0.0;
                for (int i = 0; i < shape.layers(); ++i) {
                    const Integrated by_steps = integrated(E, shape.height(i));
                    off = std::max(off, std::abs(squares[i].value - by_steps.square));
                    off_height = std::max(off_height, std::abs(heights.y(i) - by_steps.height));
                }
                std::printf("warped section, k %.1f, c %.2f: lambda^2 off by %.1e, heights by %.1e mm\n", k,
                            c, off, off_height);
                CHECK(off < 2.0 * c * c);
                CHECK(off_height < 1e-4 * t + c * c * t);
            }
        }
    }

    TEST_CASE("without warp it is R. Hill's section") {
        const material::SectionShape shape(material::gauss_layers(t, 9));
        const SectionStrain E(1.02, 0.5, 0.0, 0.0);
        material::LayerSquare squares[material::most_layers];
        REQUIRE(shape.squares(E, squares));
        material::LayerHeights heights;
        REQUIRE(shape.heights(E, heights));
        for (int i = 0; i < shape.layers(); ++i) {
            const double z = shape.height(i), square = 1.02 * 1.02 - 2.0 * z * 0.5;
            CHECK(squares[i].value == doctest::Approx(square).epsilon(1e-14));
            CHECK(heights.y(i) == doctest::Approx(2.0 * z / (1.02 + std::sqrt(square))).epsilon(1e-14));
        }
    }

    // The last two are past where R. Hill's section folds, or nearly there.
    TEST_CASE("a warped section has the derivatives of its stretches and heights") {
        const material::SectionShape shape(material::gauss_layers(t, 9));
        constexpr double step = 1e-5;
        for (const SectionStrain& E :
             {SectionStrain(1.05, 0.3, 0.1, -0.2), SectionStrain(1.05, -0.5, -0.2, 0.15),
              SectionStrain(1.1, 0.9, -0.3, 0.2), SectionStrain(1.05, 0.86, -0.4, 0.3)}) {
            material::LayerSquare here[material::most_layers], below[material::most_layers],
                above[material::most_layers];
            material::SquareCurvature curve[material::most_layers];
            material::PointSquares points, points_below, points_above;
            material::LayerHeights heights, heights_below, heights_above;
            REQUIRE(shape.squares(E, here));
            shape.curvatures(E, curve);
            shape.squares(E, points);
            REQUIRE_FALSE(points.folded);
            shape.heights(E, points, heights);
            double share[material::most_layers];
            for (int i = 0; i < shape.layers(); ++i) share[i] = std::sin(1.0 + i);
            const material::SectionHessian H = shape.height_curvature(E, points, share);
            double first = 0.0, second = 0.0, height = 0.0, of_heights = 0.0;
            for (int a = 0; a < material::section_strains; ++a) {
                SectionStrain low = E, high = E;
                low(a) -= step, high(a) += step;
                REQUIRE(shape.squares(low, below));
                REQUIRE(shape.squares(high, above));
                shape.squares(low, points_below), shape.squares(high, points_above);
                shape.heights(low, points_below, heights_below);
                shape.heights(high, points_above, heights_above);
                SectionStrain changed = SectionStrain::Zero();
                for (int i = 0; i < shape.layers() + 2; ++i)
                    height =
                        std::max(height, std::abs((heights_above.y(i) - heights_below.y(i)) / (2.0 * step) -
                                                  heights.by(i)(a)));
                for (int i = 0; i < shape.layers(); ++i) {
                    first = std::max(
                        first, std::abs((above[i].value - below[i].value) / (2.0 * step) - here[i].by(a)));
                    const SectionStrain by = (above[i].by - below[i].by) / (2.0 * step);
                    const double row[2][4] = {{curve[i].GG, curve[i].Gk, here[i].Gc[0], here[i].Gc[1]},
                                              {curve[i].Gk, curve[i].kk, here[i].kc[0], here[i].kc[1]}};
                    for (int b = 0; b < 2; ++b) second = std::max(second, std::abs(by(b) - row[b][a]));
                    changed += share[i] * (heights_above.by(i) - heights_below.by(i)) / (2.0 * step);
                }
                of_heights = std::max(of_heights, (changed - H.col(a)).cwiseAbs().maxCoeff());
            }
            std::printf(
                "warped section: lambda^2 %.1e and %.1e, heights %.1e and %.1e off their differences\n",
                first, second, height, of_heights);
            CHECK(first < 1e-7);
            CHECK(second < 1e-5);
            CHECK(height < 1e-6);
            CHECK(of_heights < 1e-4 * (1.0 + H.cwiseAbs().maxCoeff()));
        }
    }

}  // TEST_SUITE
