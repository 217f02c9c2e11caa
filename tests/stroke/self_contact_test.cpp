// The strip's contact with itself against differences: forces are the gradient of the energy, and the
// stiffness is the derivative of the forces, but for what its header leaves out.
//
// Here    a strip folded to a U whose flanges press on one another, every unknown off a little at random.
// Allowed forces 1e-4 of the largest (points that lie a little past an element's end), stiffness 5e-2 (the
// surfaces' curvature, times this overlap). Measured: printed.

#include "sim/stroke/self_contact.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <vector>

#include "sim/units.h"

using namespace overbend;

namespace {

constexpr double thickness = 1.0;

struct Folded {
    std::vector<double> length, u;
    std::vector<strip::ElementStrain> strain;
    tool::ToolSet no_tools;
    stroke::ContactScene scene;
    stroke::SelfContactSet set;
    stroke::BandMatrix matrix;

    Folded() {
        // Straight to the right, round a loop, and back down on to itself: the ends overlap by some
        // hundredths, a hundred times what a stroke leaves.
        const double r = 1.2, slope = (2.0 * r - thickness + 0.1) / 3.0;
        unsigned random = 4711;
        const auto add = [&](double x, double y, double theta) {
            for (const double value : {x, y, theta}) {
                random = random * 1664525u + 1013904223u;
                u.push_back(value + 0.0005 * (random / 4294967296.0 - 0.5));
            }
        };
        for (int i = 0; i < 5; ++i) add(-3.0 + 0.6 * i, 0.0, 0.0);
        for (int i = 0; i <= 8; ++i) {
            const double turn = pi * i / 8.0;
            add(r * std::sin(turn), r - r * std::cos(turn), turn);
        }
        for (int i = 0; i < 5; ++i)
            add(-0.6 * (i + 1), 2.0 * r - 0.6 * (i + 1) * slope, pi + std::atan(slope));
        for (std::size_t i = 0; i + 5 < u.size(); i += 3)
            length.push_back(std::hypot(u[i + 3] - u[i], u[i + 4] - u[i + 1]));
        strain.resize(length.size());
        scene.tools = &no_tools;
        scene.law = {400e3, 1e-3, 0.1, 0.07};
        scene.thickness = thickness;
        scene.length = &length;
        scene.strain = &strain;
        scene.first_element = 0, scene.last_element = static_cast<int>(length.size()) - 1;
        strain_at(u);
        stroke::find_self_contacts(scene, u, 0.3, set);
    }
    void strain_at(const std::vector<double>& at) {
        for (std::size_t e = 0; e < length.size(); ++e)
            strain[e] = strip::element_strain(&at[3 * e], length[e]);
    }
    double energy(const std::vector<double>& at, std::vector<double>& gradient) {
        strain_at(at);
        gradient.assign(at.size(), 0.0);
        matrix.resize(static_cast<int>(at.size()));
        return stroke::add_self_contacts(scene, at, set, gradient, matrix);
    }
    // Band and far blocks as one.
    std::vector<std::vector<double>> stiffness() const {
        const int size = matrix.size();
        std::vector<std::vector<double>> K(size, std::vector<double>(size, 0.0));
        for (int i = 0; i < size; ++i)
            for (int j = std::max(0, i - stroke::BandMatrix::half);
                 j <= std::min(size - 1, i + stroke::BandMatrix::half); ++j)
                K[i][j] = matrix.at(i, j);
        for (const stroke::FarBlock& b : set.far)
            for (int i = 0; i < 12; ++i)
                for (int j = 0; j < 12; ++j) {
                    const int row = 3 * (b.row_element - 1) + i, column = 3 * (b.column_element - 1) + j;
                    if (row >= 0 && column >= 0 && row < size && column < size) K[row][column] += b.K(i, j);
                }
        return K;
    }
};

}  // namespace

TEST_SUITE("stroke") {
    TEST_CASE("a strip folded on itself is held apart by the gradient of an energy") {
        Folded f;
        std::vector<double> gradient, low, high;
        f.energy(f.u, gradient);
        REQUIRE(f.set.far.size() >= 2);
        const std::vector<std::vector<double>> K = f.stiffness();
        const int size = static_cast<int>(f.u.size());
        const double h = 1e-7;
        double force = 0.0, force_error = 0.0, stiff = 0.0, stiff_error = 0.0, up = 0.0;
        for (int j = 0; j < size; ++j) {
            std::vector<double> a = f.u, b = f.u;
            a[j] -= h, b[j] += h;
            const double below = f.energy(a, low), above = f.energy(b, high);
            force = std::max(force, std::abs(gradient[j]));
            force_error = std::max(force_error, std::abs((above - below) / (2.0 * h) - gradient[j]));
            for (int i = 0; i < size; ++i) {
                stiff = std::max(stiff, std::abs(K[i][j]));
                stiff_error = std::max(stiff_error, std::abs((high[i] - low[i]) / (2.0 * h) - K[i][j]));
            }
            if (j % 3 == 1) up += gradient[j];
        }
        std::printf("self contact: forces %.1e, stiffness %.1e of the largest\n", force_error / force,
                    stiff_error / stiff);
        CHECK(force > 1.0);
        CHECK(force_error < 1e-4 * force);
        CHECK(stiff_error < 5e-2 * stiff);
        CHECK(std::abs(up) < 1e-9 * force);  // what one face does to the other comes back
    }

    TEST_CASE("neighbours along the strip do not touch") {
        Folded f;
        for (const stroke::SelfPoint& p : f.set.points)
            for (int i = p.first; i < p.first + p.count; ++i)
                CHECK(std::abs(f.set.others[i] - p.element) > 2);
    }

}  // TEST_SUITE
