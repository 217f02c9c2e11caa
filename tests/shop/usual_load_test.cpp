// What wears a tool and what dents it, told apart: the load per metre, and the pressure of full indentation.
//
//   Vickers: HV 9.81 / 0.927 on the area seen from above. 180 HV: 1904 MPa, 310 HV: 3280.
//   Soft steel as normalised, 305 MPa at 0.2 per cent, hardens under the pyramid to some 1904 / 2.9 = 657.
//
//   A V block of 12 mm, shoulders of 1.5 mm, under 2 mm of S235: 1.42 x 400 x 2^2 / 12 = 189 N/mm on both
//   shoulders, at 45 degrees each of them 189 / (2 cos 45) = 134. E* = 115385 MPa:
//   p0 = sqrt(134 x 115385 / (pi 1.5)) = 1811, mean 1423 MPa; the strip bears 3 x 450 = 1350 and no more.
//   First yield of that block is at 1.67 x 305 = 509 MPa: every bend would be called impossible.
//   2 mm of stainless steel, 1.42 x 700 x 4 / 12 = 331 N/mm: 234 on each, p0 = 2393, mean 1880 MPa.
//
// Source  D. Tabor, The Hardness of Metals, Oxford 1951 (from memory); force of a V bend: common practice.

#include <doctest/doctest.h>

#include <cmath>

#include "sim/shop/line_contact.h"
#include "sim/shop/tool_load.h"
#include "sim/tool/die.h"
#include "sim/units.h"

using namespace overbend;
using namespace overbend::shop;
using doctest::Approx;

namespace {

// As their cards in assets/tool-steels.
ToolSteel c45() {
    ToolSteel steel;
    steel.hardness = 180.0, steel.compressive_yield = 305.0, steel.bending_strength = 305.0;
    return steel;
}
ToolSteel prehardened() {
    ToolSteel steel;
    steel.hardness = 310.0, steel.compressive_yield = 850.0, steel.bending_strength = 850.0;
    return steel;
}

double on_both_shoulders(double strength, double thickness, double opening) {
    return 1.42 * strength * thickness * thickness / opening;
}

// Of one shoulder with the strip at 45 degrees.
LineContact on_shoulder(double both, double radius, double flow_stress) {
    const double modulus = contact_modulus({210e3, 0.3}, {210e3, 0.3});
    return line_contact(both / (2.0 * std::cos(45.0 * degree)), modulus, radius, flow_stress);
}

}  // namespace

TEST_CASE("a tool is indented at the pressure that its hardness is measured with") {
    CHECK(indentation_pressure(c45()) == Approx(1904.0).epsilon(1e-3));
    CHECK(indentation_pressure(prehardened()) == Approx(3280.0).epsilon(1e-3));
    ToolSteel unknown = prehardened();
    unknown.hardness = 0.0;
    CHECK(indentation_pressure(unknown) == Approx(2380.0));
    // It is a mean pressure, beyond 2.8 times the yield stress, and far beyond first yield.
    for (const ToolSteel& steel : {c45(), prehardened()}) {
        CHECK(indentation_pressure(steel) > 2.8 * steel.compressive_yield);
        CHECK(allowables(steel).contact == indentation_pressure(steel));
    }
}

TEST_CASE("ordinary V blocks are not indented at usual loads") {
    struct Usual {
        double strength, flow_stress;  // MPa, of the strip: on paper, and as it is bent
        double mean;                   // MPa, by hand
    };
    for (const Usual& strip : {Usual{400.0, 450.0, 1350.0}, Usual{700.0, 900.0, 1880.0}}) {
        const LineContact c =
            on_shoulder(on_both_shoulders(strip.strength, 2.0, 12.0), 1.5, strip.flow_stress);
        CHECK(c.mean == Approx(strip.mean).epsilon(2e-3));
        CHECK(c.mean < indentation_pressure(c45()));
        CHECK(c.mean < indentation_pressure(prehardened()));
    }
    // 2 mm of spring steel at 1500 MPa and sharp shoulders do leave dents in C45, not in prehardened steel.
    const LineContact hard = on_shoulder(on_both_shoulders(1500.0, 2.0, 12.0), 1.5, 1800.0);
    CHECK(hard.mean > indentation_pressure(c45()));
    CHECK(hard.mean < indentation_pressure(prehardened()));
}

// Common practice, no source: 400 kN/m below 250 HV, 800 below 400 HV, 1500 beyond.
TEST_CASE("the usual load per metre goes by hardness, and ordinary blocks are below it") {
    CHECK(usual_line_load(180.0).usual == 400.0);
    CHECK(usual_line_load(249.0).usual == 400.0);
    CHECK(usual_line_load(250.0).usual == 800.0);
    CHECK(usual_line_load(399.0).usual == 800.0);
    CHECK(usual_line_load(400.0).usual == 1500.0);
    for (const double hardness : {180.0, 310.0, 697.0}) {
        const LineLoad load = usual_line_load(hardness);
        CHECK(load.least < load.usual);
        CHECK(load.usual < load.most);
    }
    CHECK(on_both_shoulders(400.0, 2.0, 12.0) < usual_line_load(180.0).usual);
    CHECK(on_both_shoulders(700.0, 2.0, 12.0) < usual_line_load(180.0).usual);
    CHECK(on_both_shoulders(1500.0, 2.0, 12.0) > usual_line_load(180.0).usual);
}

// The sections of the same block, 40 mm wide and 50 high: the forces on its shoulders at 45 degrees.
TEST_CASE("the sections of an ordinary V block of C45 bear usual loads") {
    tool::VeeDie die;
    die.faces = {{84.0 * degree, 12.0, 1.5, 0.0}};
    die.width = 40.0, die.height = 50.0;
    const ToolSections sections = sections_of(make_outline(die, 1), HeldBy::bottom);
    const double each = 0.5 * on_both_shoulders(700.0, 2.0, 12.0), side = 1.5 * std::sqrt(0.5);
    // Where the shoulders' arcs, centred 1.5 mm below the face, lie at 45 degrees.
    const std::vector<ToolForce> forces = {{{6.0 - side, side - 1.5}, {each, -each}},
                                           {{side - 6.0, side - 1.5}, {-each, -each}}};
    const std::optional<SectionLoad> weakest = weakest_section(sections, forces, allowables(c45()));
    REQUIRE(weakest);
    CHECK(weakest->share(allowables(c45())) < 1.0);
    CHECK(weakest->share(allowables(prehardened())) < 0.5);
}
