// The terms of an increment's energy, each alone, against central differences: the gradient is that of the
// energy, the hessian that of the gradient. Contact has files of its own (contact_test.cpp,
// self_contact_test.cpp).
//
// Here    a strip of eight elements of unlike lengths, bent and stretched until most layers flow, every
//         unknown off a little at random.
// Allowed 1e-6 of the largest entry. Measured: printed.

#include <doctest/doctest.h>

#include <cmath>
#include <cstring>
#include <vector>

#include "sim/material/section.h"
#include "sim/strip/mesh.h"
#include "sim/stroke/element_energy.h"
#include "sim/stroke/hold.h"
#include "sim/stroke/length_scale.h"
#include "sim/stroke/sections.h"
#include "sim/stroke/spring_force.h"
#include "sim/stroke/weight.h"
#include "tests/stroke/by_differences.h"
#include "tests/stroke/strip_metals.h"

using namespace overbend;
using tests::by_differences;
using tests::DifferenceErrors;

namespace {

constexpr double allowed = 1e-6;

struct Bent {
    strip::StripState strip = strip::flat_strip(1.0, {0.0, 0.3, 0.5, 0.9, 1.2, 1.4, 1.9, 2.1, 2.5}, 7);
    std::vector<double> length, before, u;
    material::SectionShape shape{{strip.layer_height, strip.layer_weight}};
    stroke::StripStrains strains;
    stroke::Equations equations;

    // springs: compressions behind the nodes' unknowns.
    explicit Bent(const std::vector<double>& springs = {}) {
        constexpr double curvature = 0.2, stretch = 1.004;
        unsigned random = 97531;
        const auto off = [&] {
            random = random * 1664525u + 1013904223u;
            return 0.004 * (random / 4294967296.0 - 0.5);
        };
        for (int e = 0; e < 8; ++e) length.push_back(strip.length(e));
        for (const double along : strip.blank_position) {
            const double turn = curvature * along, radius = stretch / curvature;
            for (const double value :
                 {radius * std::sin(turn), radius * (1.0 - std::cos(turn)), turn, 0.02, -0.03}) {
                before.push_back(value + off());
                u.push_back(before.back() + off());
            }
        }
        for (const double compression : springs)
            u.push_back(compression), before.push_back(compression - 0.1);
    }
    // A term's energy is what add(u) returns after it has added to the equations.
    template <class Add>
    DifferenceErrors errors(const char* name, double step, const Add& add) {
        return by_differences(name, u, step, [&](const std::vector<double>& at) {
            equations.resize(9, static_cast<int>(at.size()) - 9 * strip::node_unknowns);
            stroke::strain_strip(shape, length, at, strains);
            return tests::evaluated(add(at), equations);
        });
    }
};

void check(const DifferenceErrors& errors) {
    CHECK(errors.largest_gradient > 0.0);
    CHECK(errors.gradient < allowed);
    CHECK(errors.hessian < allowed);
}

}  // namespace

TEST_SUITE("stroke") {
    TEST_CASE("the sections' term has the derivatives of its energy") {
        for (const material::Card& card : {tests::hardening_metal(), tests::perfectly_plastic_metal()}) {
            const material::LayerLaw law(card);
            Bent b;
            stroke::Sections sections;
            stroke::strain_strip(b.shape, b.length, b.before, b.strains);
            stroke::start_sections(law, b.shape, b.strip, b.length, b.strains, {}, sections);
            check(b.errors(card.name.c_str(), 1e-6, [&](const std::vector<double>& at) {
                const auto sum = *stroke::add_sections(law, b.shape, b.length, b.strains, b.before, at,
                                                       sections, b.equations);
                stroke::add_section_hessians(b.shape, b.length, b.strains, sections, b.equations);
                b.equations.take_over_gradient(b.strains, b.length);
                b.equations.take_over_hessian(b.strains, b.length);
                return sum.energy + sum.along;
            }));
            for (const double active : sections.active) CHECK(active > 0.0);
        }
    }

    TEST_CASE("elements have the same bytes on every instruction set") {
        if (!material::has_avx2()) return;
        for (const material::Card& card : {tests::hardening_metal(), tests::perfectly_plastic_metal()}) {
            const material::LayerLaw law(card);
            Bent b;
            stroke::strain_strip(b.shape, b.length, b.before, b.strains);
            stroke::Sections sections;
            stroke::start_sections(law, b.shape, b.strip, b.length, b.strains, {}, sections);
            stroke::strain_strip(b.shape, b.length, b.u, b.strains);
            stroke::Sections others = sections;
            for (int e = 0; e < 8; ++e) {
                stroke::ElementGradient gradient[2]{};
                double hessian[2][stroke::hessian_rows * stroke::hessian_rows] = {};
                const auto run = [&](const stroke::ElementKernels& kernels, stroke::Sections& of, int i) {
                    const stroke::ElementState state =
                        stroke::element_state(b.shape, b.strains, b.length[e], e, of);
                    kernels.gradient(material::lane_law(law), state, gradient[i]);
                    kernels.hessian(state, hessian[i]);
                };
                run(stroke::element_kernels_sse2(), sections, 0);
                run(stroke::element_kernels_avx2(), others, 1);
                CHECK(gradient[0].active > 0.0);
                CHECK(std::memcmp(&gradient[0], &gradient[1], sizeof gradient[0]) == 0);
                CHECK(std::memcmp(hessian[0], hessian[1], sizeof hessian[0]) == 0);
            }
            CHECK(sections.rows == others.rows);
        }
    }

    TEST_CASE("a folded section has no energy") {
        const material::LayerLaw law(tests::hardening_metal());
        Bent b;
        stroke::Sections sections;
        stroke::strain_strip(b.shape, b.length, b.u, b.strains);
        stroke::start_sections(law, b.shape, b.strip, b.length, b.strains, {}, sections);
        b.strains.sections[3](1) = 3.0;
        b.equations.resize(9, 0);
        CHECK_FALSE(stroke::add_sections(law, b.shape, b.length, b.strains, b.u, b.u, sections, b.equations));
    }

    TEST_CASE("the length-scale term has the derivatives of its energy") {
        Bent b;
        stroke::LengthScale term;
        term.weight = {0.0, 2.0, 5.0, 0.0, 3.0, 1.0, 4.0, 0.0};
        check(b.errors("length scale", 1e-4, [&](const std::vector<double>& at) {
            return stroke::add_length_scale(term, b.length, b.before, at, b.equations);
        }));
    }

    // Element 4, 0.2 mm long, turned by 0.01 and its layers flow; its neighbours have it within reach, the
    // next ones do not. By hand: l^4 m / r L with l = 0.1, m = 50, r = 2 x 0.01 / 0.2.
    TEST_CASE("the length-scale term weighs by the most active element within reach") {
        stroke::SolverState c;
        c.strip = Bent().strip;
        c.last_move.assign(9 * strip::node_unknowns, 0.0);
        c.active.assign(8, 0.0);
        for (int i = 5; i < 9; ++i)
            c.last_move[strip::node_unknowns * i + strip::turn_unknown] = 0.01;  // element 4 turned
        c.active[4] = 50.0;
        const Bent b;
        const std::vector<double> w = stroke::length_scale_weights(c, b.length, 0.1, 2.0, 0.01);
        CHECK(w[0] == 0.0);
        CHECK(w[2] == 0.0);
        CHECK(w[3] == doctest::Approx(1e-4 * 50.0 / (2.0 * 0.01 / 0.2) * 0.3));
        CHECK(w[4] == doctest::Approx(1e-4 * 50.0 / (2.0 * 0.01 / 0.2) * 0.2));
        CHECK(w[5] == doctest::Approx(1e-4 * 50.0 / (2.0 * 0.01 / 0.2) * 0.5));
        CHECK(w[6] == 0.0);
        for (const double none : stroke::length_scale_weights(c, b.length, 0.1, 0.0, 0.01))
            CHECK(none == 0.0);
    }

    TEST_CASE("the hold has the derivatives of its energy, and holds what tools may touch") {
        Bent b;
        stroke::ContactScene scene;
        scene.thickness = 1.0;
        scene.length = &b.length;
        scene.first_element = 2, scene.last_element = 5;
        const stroke::Hold hold = stroke::hold_rigid_modes(scene, {}, 200e3);
        CHECK(hold.along[1] == 0.0);
        CHECK(hold.along[3] > 0.0);
        CHECK(hold.along[7] == 0.0);
        check(b.errors("hold", 1e-4, [&](const std::vector<double>& at) {
            return stroke::add_hold(hold, b.before, at, b.equations);
        }));
    }

    TEST_CASE("the weight's gradient is that of its energy") {
        Bent b;
        check(b.errors("weight", 1e-4, [&](const std::vector<double>& at) {
            return stroke::add_weight(0.1, b.length, b.before, at, b.equations);
        }));
        double whole = 0.0;
        for (const double force : b.equations.gradient) whole += force;
        CHECK(whole == doctest::Approx(0.1 * 2.5));
    }

    // One spring at work, one against its own stop, one beyond the other end, two where a stop begins.
    TEST_CASE("the springs' term has the derivatives of its energy") {
        Bent b({1.0, -0.05, 2.05, 0.002, 1.997});
        const tool::Spring spring{30.0, 8.0, 2.0};
        std::vector<stroke::SpringUnknown> springs(5, {&spring, {0.0, 1e5, 0.01}, 0.7});
        check(b.errors("springs", 1e-6, [&](const std::vector<double>& at) {
            const stroke::SpringSum sum = stroke::add_springs(springs, 2e-4, b.before, at, b.equations);
            return sum.stored + sum.hold;
        }));
    }

}  // TEST_SUITE
