// The strip's contact with itself against differences: forces are the gradient of the energy, and the
// stiffness is the derivative of the forces, but for what its header leaves out.
//
// Here    a strip folded to a U whose flanges press on one another, every unknown off a little at random.
// Allowed forces 1e-4 of the largest (points that lie a little past an element's end), stiffness 5e-2 (the
// surfaces' curvature, times this overlap). Measured: printed.

#include "sim/stroke/self_contact.h"

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

#include "sim/units.h"
#include "tests/stroke/by_differences.h"

using namespace overbend;

namespace {

constexpr double thickness = 1.0;

struct Folded {
    std::vector<double> length, u;
    material::SectionShape shape{material::gauss_layers(thickness, 9)};
    stroke::StripStrains strains;
    tool::ToolSet no_tools;
    stroke::ContactScene scene;
    stroke::SelfContactSet set;
    stroke::Equations equations;

    Folded() {
        // Straight to the right, round a loop, and back down on to itself: the ends overlap by some
        // hundredths, a hundred times what a stroke leaves.
        const double r = 1.2, slope = (2.0 * r - thickness + 0.1) / 3.0;
        unsigned random = 4711;
        const auto add = [&](double x, double y, double theta) {
            for (const double value : {x, y, theta, 0.01, -0.02}) {
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
        constexpr std::size_t each = strip::node_unknowns;
        for (std::size_t i = 0; i + each < u.size(); i += each)
            length.push_back(std::hypot(u[i + each] - u[i], u[i + each + 1] - u[i + 1]));
        scene.tools = &no_tools;
        scene.law = {400e3, 1e-3, 0.1, 150e3, 0.07};
        scene.thickness = thickness;
        scene.length = &length;
        scene.shape = &shape;
        scene.strains = &strains;
        scene.first_element = 0, scene.last_element = static_cast<int>(length.size()) - 1;
        strain_at(u);
        stroke::find_self_contacts(scene, u, 0.3, set);
    }
    void strain_at(const std::vector<double>& at) { stroke::strain_strip(shape, length, at, strains); }
    // Band and far blocks as one.
    tests::Evaluated evaluated(const std::vector<double>& at) {
        strain_at(at);
        const int size = static_cast<int>(at.size());
        equations.resize(size / strip::node_unknowns, 0);
        const double energy = stroke::add_self_contacts(scene, at, set, equations);
        equations.take_over_gradient(strains, length);
        equations.take_over_hessian(strains, length);
        tests::Evaluated all = tests::evaluated(energy, equations);
        for (const stroke::FarBlock& b : set.far)
            for (int i = 0; i < stroke::around; ++i)
                for (int j = 0; j < stroke::around; ++j) {
                    const int row = strip::node_unknowns * (b.row_element - 1) + i,
                              column = strip::node_unknowns * (b.column_element - 1) + j;
                    if (row >= 0 && column >= 0 && row < size && column < size)
                        all.hessian(row, column) += b.K(i, j);
                }
        return all;
    }
};

}  // namespace

TEST_SUITE("stroke") {
    TEST_CASE("a strip folded on itself is held apart by the gradient of an energy") {
        Folded f;
        const tests::Evaluated here = f.evaluated(f.u);
        REQUIRE(f.set.far.size() >= 2);
        const tests::DifferenceErrors errors = tests::by_differences(
            "self contact", f.u, 1e-7, [&](const std::vector<double>& at) { return f.evaluated(at); });
        CHECK(errors.largest_gradient > 1.0);
        CHECK(errors.gradient < 1e-4);
        CHECK(errors.hessian < 5e-2);
        double up = 0.0;
        for (int i = 1; i < here.gradient.size(); i += strip::node_unknowns) up += here.gradient(i);
        CHECK(std::abs(up) < 1e-9 * errors.largest_gradient);  // what one face does to the other comes back
    }

    TEST_CASE("neighbours along the strip do not touch") {
        Folded f;
        for (const stroke::SelfPoint& p : f.set.points)
            for (int i = p.first; i < p.first + p.count; ++i)
                CHECK(std::abs(f.set.others[i] - p.element) > 2);
    }

}  // TEST_SUITE
