// Contact's forces and stiffness against differences: without friction the forces are the gradient of the
// contacts' energy; with it the stiffness is still the forces' derivative.
//
// Here    a strip of six elements bent round a nose, pressed by it and by two shoulders, with every unknown
//         displaced a little at random, so that nothing is symmetric and height, stretch and shear all count;
//         the die stands on a spring.
// Allowed 1e-5 of the largest entry. Measured: printed.

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

#include "sim/stroke/contact.h"
#include "sim/tool/die.h"
#include "sim/tool/punch.h"
#include "tests/stroke/by_differences.h"

using namespace overbend;
using stroke::Vec2;

namespace {

constexpr double thickness = 1.0, curvature = 0.35;

struct Pressed {
    tool::ToolSet tools;
    std::vector<double> length = std::vector<double>(6, 0.6);
    material::SectionShape shape{material::gauss_layers(thickness, 9)};
    stroke::StripStrains strains;
    std::vector<double> start, u;
    stroke::ContactScene scene;
    stroke::ContactSet set;
    stroke::ToolStands stands = stroke::ToolStands(2);
    stroke::Equations equations;

    // The die stands on a spring, whose compression is the unknown behind the nodes'.
    explicit Pressed(double friction) {
        const tool::VeePunch punch{0.6, 1.8, 60.0, 12.0};
        tools.push_back({"punch", tool::Role::punch, tool::make_outline(punch), Vec2::Zero()});
        tools.push_back(
            {"die", tool::Role::die, tool::make_outline(tool::OpenDie{2.4, 0.6, 20.0, 20.0}), Vec2::Zero()});
        scene.tools = &tools;
        scene.law = {200e3, 1e-3, friction, 150e3, 0.07};
        scene.thickness = thickness;
        scene.length = &length;
        scene.shape = &shape;
        scene.strains = &strains;
        scene.first_element = 0, scene.last_element = 5;
        // An arc about a centre above, its lowest point at the origin; then every unknown off it a little.
        unsigned random = 12345;
        for (int i = 0; i < 7; ++i) {
            const double turn = curvature * (0.6 * i - 1.8);
            for (const double value :
                 {std::sin(turn) / curvature, (1.0 - std::cos(turn)) / curvature, turn, 0.05, -0.03}) {
                random = random * 1664525u + 1013904223u;
                u.push_back(value + 0.004 * (random / 4294967296.0 - 0.5));
            }
        }
        start = u;
        for (double& value : start) value -= 0.003;
        strain_at(u);
        bring_on(tool::Role::punch, 1.0);
        bring_on(tool::Role::die, -1.0);
        strain_at(start);
        stand(0.0);
        stroke::find_contacts(scene, start, stands, 0.5, {}, set);
        u.push_back(0.0);
    }
    void strain_at(const std::vector<double>& at) { stroke::strain_strip(shape, length, at, strains); }
    void stand(double compression) {
        for (int k = 0; k < 2; ++k) stands[k].at = tools[k].position, stands[k].moved = Vec2(0.0, -0.01);
        stands[1].spring = 0, stands[1].gives = Vec2(0.0, -1.0);
        stands[1].at.y() -= compression;
        stands[1].moved = Vec2(0.0, -compression);
    }
    // Moves the tool until it is a fiftieth of a millimetre deep in the strip.
    void bring_on(tool::Role role, double down) {
        const int k = role == tool::Role::punch ? 0 : 1;
        tools[k].position.y() = 30.0 * down;
        for (int i = 0; i < 200; ++i) {
            stand(0.0);
            tools[k].position.y() -= 0.7 * down * (stroke::least_gap(scene, u, stands[k], k) + 0.02);
        }
    }
    tests::Evaluated evaluated(const std::vector<double>& at) {
        strain_at(at);
        stand(at.back());
        equations.resize(7, 1);
        const double energy = stroke::add_contacts(scene, at, stands, set, equations).energy;
        equations.take_over_gradient(strains, length);
        equations.take_over_hessian(strains, length);
        return tests::evaluated(energy, equations);
    }
};

}  // namespace

TEST_SUITE("stroke") {
    TEST_CASE("contact's stiffness is the derivative of its forces, and they of its energy") {
        for (const double friction : {0.0, 0.15}) {
            CAPTURE(friction);
            Pressed p(friction);
            p.evaluated(p.u);
            REQUIRE(stroke::contact_patches(p.set, 0.5 * thickness).size() >= 3);
            const tests::DifferenceErrors errors =
                tests::by_differences(friction > 0.0 ? "contact with friction" : "contact", p.u, 1e-7,
                                      [&](const std::vector<double>& at) { return p.evaluated(at); });
            CHECK(errors.largest_gradient > 1.0);
            if (friction == 0.0) CHECK(errors.gradient < 1e-5);
            CHECK(errors.hessian < 1e-5);
        }
    }

}  // TEST_SUITE
