// Stresses in tools against beam theory worked out by hand:  sigma = N / h +- 6 M / h^2  of a section h
// thick.
//
// Source  any handbook of mechanical engineering; Roark's Formulas for Stress and Strain, chapters 8 and 12
//         (from memory).
// Allowed 1 per cent: cuts are laid 0.002 mm beside the corners.

#include <doctest/doctest.h>

#include <cmath>
#include <random>

#include "sim/errors.h"
#include "sim/shop/tool_load.h"
#include "sim/tool/block.h"
#include "sim/tool/die.h"
#include "sim/tool/punch.h"
#include "sim/units.h"

using namespace overbend;
using namespace overbend::shop;
using doctest::Approx;
using tool::Vec2;

namespace {

const Allowable equal{1.0, 1.0, 1.0};

tool::ChannelPunch l_foot() {
    tool::ChannelPunch punch;
    punch.width = 20.0, punch.corner_radius = 0.0, punch.foot_height = 10.0;
    punch.shank_width = 6.0, punch.shank = tool::Shank::right, punch.height = 60.0;
    return punch;
}

bool level(const Cut& cut) {
    return std::abs(cut.from.y() - cut.to.y()) < 1e-9;
}

}  // namespace

// 200 N per mm in the middle of a block 10 mm thick: 200 / 10 = 20 MPa.
TEST_CASE("a column is pressed evenly") {
    const ToolSections block = sections_of(tool::block_facing_down({10.0, 0.0, 0.0, 50.0}), HeldBy::top);
    const std::vector<ToolForce> forces = {{{0.0, 0.0}, {0.0, 200.0}}};
    int looked_at = 0;
    for (const Cut& cut : block.cuts) {
        if (!level(cut)) continue;
        const std::optional<SectionLoad> load = load_of(block, cut, forces);
        const bool near = cut.from.y() < 7.5;
        CHECK(load.has_value() == !near);
        if (!load) continue;
        ++looked_at;
        CHECK(load->axial == Approx(-200.0));
        CHECK(load->compression == Approx(20.0));
        CHECK(load->tension == 0.0);
    }
    CHECK(looked_at > 50);
}

// The toe of an L-shaped foot carries 100 N per mm at x = -10. Its shank, 6 mm thick from x = 4 to 10, has
// its axis at x = 7: M = 100 x 17 = 1700 N mm per mm, 6 M / h^2 = 283.3, N / h = -16.67 MPa: 266.7 pulled,
// 300 pressed. Beside the shank the foot is a cantilever 10 mm thick and 14 long: 6 x 1400 / 100 = 84 MPa.
TEST_CASE("an L-shaped punch is bent by its eccentric load") {
    const ToolSections punch = sections_of(make_outline(l_foot()), HeldBy::top);
    const std::vector<ToolForce> forces = {{{-10.0, 0.0}, {0.0, 100.0}}};
    const std::optional<SectionLoad> weakest = weakest_section(punch, forces, equal);
    REQUIRE(weakest);
    CHECK(weakest->compression == Approx(300.0).epsilon(0.01));
    CHECK(weakest->tension == Approx(266.7).epsilon(0.01));
    CHECK(weakest->cut.thickness == Approx(6.0).epsilon(0.01));
    CHECK(weakest->cut.from.y() >= 10.0);
    bool root_of_the_toe = false;
    for (const Cut& cut : punch.cuts) {
        const bool upright = std::abs(cut.from.x() - cut.to.x()) < 1e-9;
        if (!upright || std::abs(cut.from.x() - 4.0) > 0.01 || cut.thickness > 10.1) continue;
        const std::optional<SectionLoad> load = load_of(punch, cut, forces);
        REQUIRE(load);
        root_of_the_toe = true;
        CHECK(load->bending == Approx(1400.0).epsilon(0.01));
        CHECK(load->tension == Approx(84.0).epsilon(0.01));
        CHECK(std::abs(load->shear) == Approx(100.0));
    }
    CHECK(root_of_the_toe);
}

// Both corners of the foot carry 50: the resultant in the middle, 7 mm off the shank's axis. M = 700,
// 6 M / h^2 = 116.7, N / h = -16.67 MPa.
TEST_CASE("an L-shaped punch that is loaded evenly is bent less") {
    const ToolSections punch = sections_of(make_outline(l_foot()), HeldBy::top);
    const std::optional<SectionLoad> weakest =
        weakest_section(punch, {{{-10.0, 0.0}, {0.0, 50.0}}, {{10.0, 0.0}, {0.0, 50.0}}}, equal);
    REQUIRE(weakest);
    CHECK(weakest->compression == Approx(133.3).epsilon(0.01));
}

// Legs of a slot 20 mm deep, 7 mm thick each (from x = 3 to 10), pressed apart by 50 N per mm a millimetre
// below their top: M = 50 x 19 = 950 N mm per mm at the floor, 6 M / h^2 = 116.3 MPa. The web below the slot
// is 5 mm thick and pulled by 50 besides, with its middle 21.5 mm below the forces: 50 / 5 + 6 x 1075 / 25 =
// 268 MPa.
TEST_CASE("legs of a die's groove are bent apart, and the web below them is torn open") {
    tool::OpenDie die;
    die.die_opening = 8.0, die.shoulder_radius = 1.0, die.depth = 20.0, die.width = 20.0;
    const ToolSections sections = sections_of(make_outline(die), HeldBy::bottom);
    const std::vector<ToolForce> apart = {{{3.0, -1.0}, {50.0, 0.0}}, {{-3.0, -1.0}, {-50.0, 0.0}}};
    const std::optional<SectionLoad> weakest = weakest_section(sections, apart, equal);
    REQUIRE(weakest);
    CHECK(weakest->tension == Approx(268.0).epsilon(0.01));
    CHECK(weakest->cut.thickness == Approx(5.0).epsilon(0.01));
    int legs = 0;
    for (const Cut& cut : sections.cuts) {
        if (!level(cut) || cut.thickness > 8.0 || std::abs(cut.from.y() + 20.0) > 0.01) continue;
        const std::optional<SectionLoad> load = load_of(sections, cut, apart);
        REQUIRE(load);
        ++legs;
        CHECK(load->tension == Approx(116.3).epsilon(0.01));
    }
    CHECK(legs == 2);
}

// Of a block that stands free, what lies below a level cut carries the forces that act below it.
TEST_CASE("random forces: a cut carries what acts beyond it") {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> half(-6.0, 6.0), push(-300.0, 300.0), high(0.5, 10.0);
    const ToolSections block = sections_of(tool::block_facing_down({12.0, 0.0, 0.0, 80.0}), HeldBy::top);
    for (int trial = 0; trial < 50; ++trial) {
        std::vector<ToolForce> forces;
        for (int i = 0; i < 3; ++i) forces.push_back({{half(random), 0.0}, {push(random), push(random)}});
        forces.push_back({{6.0, high(random)}, {push(random), push(random)}});
        for (const Cut& cut : block.cuts) {
            const double y = cut.from.y();
            if (!level(cut) || y < 20.0) continue;
            double axial = 0.0, shear = 0.0, moment = 0.0;
            for (const ToolForce& f : forces) {
                axial -= f.force.y(), shear += f.force.x();
                moment += f.at.x() * f.force.y() - (f.at.y() - y) * f.force.x();
            }
            const std::optional<SectionLoad> load = load_of(block, cut, forces);
            REQUIRE(load);
            CHECK(load->axial == Approx(axial).epsilon(1e-9));
            CHECK(std::abs(load->shear) == Approx(std::abs(shear)).epsilon(1e-9));
            CHECK(load->bending == Approx(std::abs(moment)).epsilon(1e-9));
        }
    }
}

TEST_CASE("random necks: the weakest section is found where the tool is thinnest") {
    std::mt19937 random(11);
    std::uniform_real_distribution<double> deep(2.0, 6.0), high(15.0, 60.0);
    for (int trial = 0; trial < 30; ++trial) {
        const double y = high(random), cut_in = deep(random);
        // 20 wide, a slot of 3 mm cut in from the right
        const tool::ArcOutline outline = tool::round_corners({{{-10.0, 0.0}, 0.0},
                                                              {{10.0, 0.0}, 0.0},
                                                              {{10.0, y}, 0.0},
                                                              {{10.0 - cut_in, y}, 0.0},
                                                              {{10.0 - cut_in, y + 3.0}, 0.0},
                                                              {{10.0, y + 3.0}, 0.0},
                                                              {{10.0, 80.0}, 0.0},
                                                              {{-10.0, 80.0}, 0.0}});
        const ToolSections sections = sections_of(outline, HeldBy::top);
        const std::optional<SectionLoad> weakest =
            weakest_section(sections, {{{0.0, 0.0}, {0.0, 150.0}}}, equal);
        REQUIRE(weakest);
        // F / h + 6 F e / h^2 with e = half of what is cut in
        const double h = 20.0 - cut_in;
        CHECK(weakest->compression == Approx(150.0 / h + 3.0 * 150.0 * cut_in / (h * h)).epsilon(0.01));
        CHECK(weakest->cut.from.y() > y - 0.01);
        CHECK(weakest->cut.from.y() < y + 3.01);
    }
}

TEST_CASE("the thickness that bears is the one at which a limit is met") {
    std::mt19937 random(3);
    std::uniform_real_distribution<double> axial(-400.0, 100.0), bending(0.0, 3000.0);
    const Allowable steel{600.0, 1400.0, 2000.0};
    for (int trial = 0; trial < 100; ++trial) {
        SectionLoad load;
        load.axial = axial(random), load.bending = bending(random);
        const double h = thickness_that_bears(load, steel);
        load.tension = load.axial / h + 6.0 * load.bending / (h * h);
        load.compression = -load.axial / h + 6.0 * load.bending / (h * h);
        CHECK(load.share(steel) == Approx(1.0).epsilon(1e-9));
    }
}

// A block 20 mm wide and 30 high stands on its bottom and is pressed at its right edge, x = 9 of 10: the held
// face gives back 100 / 20 (1 + 12 x 9 x / 20^2) N per mm, 18.5 MPa at x = 10. A corner of it with nothing
// but that on it would look as if it were the weakest section, since nothing else is loaded like it; so the
// cut across the whole block counts: 100 / 20 + 6 x 900 / 400 = 18.5 MPa.
TEST_CASE("a corner that is cut off the held face is no section") {
    const ToolSections block = sections_of(tool::block_facing_up({20.0, 0.0, 0.0, 30.0}), HeldBy::bottom);
    const std::vector<ToolForce> forces = {{{9.0, 0.0}, {0.0, -100.0}}};
    int chips = 0, whole = 0;
    for (const Cut& cut : block.cuts) {
        const bool on_bottom = std::abs(cut.from.y() + 30.0) < 1e-6 || std::abs(cut.to.y() + 30.0) < 1e-6;
        const bool on_top = std::abs(cut.from.y()) < 1e-6 || std::abs(cut.to.y()) < 1e-6;
        const bool on_side = !level(cut) && on_bottom && !on_top;
        CHECK(cut.chip == on_side);
        chips += on_side;
        if (on_side) CHECK_FALSE(load_of(block, cut, forces));
        if (level(cut)) ++whole;
    }
    CHECK(chips > 100);
    CHECK(whole > 50);
    const std::optional<SectionLoad> weakest = weakest_section(block, forces, equal);
    REQUIRE(weakest);
    CHECK(weakest->cut.thickness == Approx(20.0).epsilon(0.05));
    CHECK(weakest->compression == Approx(18.5).epsilon(0.01));
}

// A block of 20 x 12 mm is too stout for a beam's section across it: the face that it stands on counts, 100
// / 20 = 5 MPa, evenly.
TEST_CASE("a stout block has its held face for a section") {
    const ToolSections block = sections_of(tool::block_facing_up({20.0, 0.0, 0.0, 12.0}), HeldBy::bottom);
    std::vector<ToolForce> evenly;
    for (int i = 0; i < 40; ++i) evenly.push_back({{-9.75 + 0.5 * i, 0.0}, {0.0, -2.5}});
    const std::optional<SectionLoad> weakest = weakest_section(block, evenly, equal);
    REQUIRE(weakest);
    CHECK(weakest->compression == Approx(5.0));
    CHECK(weakest->cut.thickness == Approx(20.0));
}

// A die with a groove above and one below stands on two lands: its middle is the block's.
TEST_CASE("a die that is turned over stands on both lands beside its lower groove") {
    tool::VeeDie die;
    die.faces = {{84.0 * degree, 10.0, 1.0, 0.0}, {84.0 * degree, 12.0, 1.0, 0.0}};
    die.width = 40.0, die.height = 40.0;
    const ToolSections sections = sections_of(make_outline(die, 1), HeldBy::bottom);
    CHECK(sections.held.size() == 2);
    CHECK(held_middle(sections).x() == Approx(0.0));
    CHECK(held_width(sections) == Approx(40.0));
    CHECK(held_length(sections) == Approx(40.0 - 12.0));
    const std::vector<ToolForce> both = {{{-5.0, 0.0}, {20.0, -50.0}}, {{5.0, 0.0}, {-20.0, -50.0}}};
    CHECK(holder_load(sections, both).beside == Approx(0.0));
    // Half of the load goes down through either leg.
    int legs = 0;
    for (const Cut& cut : sections.cuts) {
        if (!level(cut) || cut.from.y() > -36.0) continue;
        const std::optional<SectionLoad> load = load_of(sections, cut, both);
        REQUIRE(load);
        ++legs;
        CHECK(load->axial == Approx(-50.0));
    }
    CHECK(legs > 2);
}

// The die of the groove above: its web goes from the floor of the slot down to the held face, with one leg
// or with both of them loaded.
TEST_CASE("the web under a groove is a section, whatever leg is loaded") {
    tool::OpenDie die;
    die.die_opening = 8.0, die.shoulder_radius = 1.0, die.depth = 20.0, die.width = 20.0;
    const ToolSections sections = sections_of(make_outline(die), HeldBy::bottom);
    int webs = 0;
    for (const Cut& cut : sections.cuts) {
        const double low = std::min(cut.from.y(), cut.to.y()), high = std::max(cut.from.y(), cut.to.y());
        if (std::abs(low + 25.0) > 1e-6 || std::abs(high + 20.0) > 1e-6) continue;
        ++webs;
        CHECK_FALSE(cut.chip);
        CHECK(load_of(sections, cut, {{{3.0, -1.0}, {50.0, 0.0}}}));
    }
    CHECK(webs > 20);
}

// 100 N per mm at x = -10 on the L-shaped foot, whose shank stands from x = 4 to 10: 17 mm beside its
// middle. A thrust to the right is told apart from it.
TEST_CASE("what a tool asks of its holder") {
    const ToolSections punch = sections_of(make_outline(l_foot()), HeldBy::top);
    const HolderLoad load = holder_load(punch, {{{-10.0, 0.0}, {0.0, 100.0}}, {{-10.0, 2.0}, {30.0, 0.0}}});
    CHECK(load.pressed == Approx(100.0));
    CHECK(load.thrust == Approx(30.0));
    CHECK(load.beside == Approx(-17.0));
    CHECK(load.width == Approx(6.0));
    const HolderLoad both = holder_load(punch, {{{-10.0, 0.0}, {0.0, 50.0}}, {{10.0, 0.0}, {0.0, 50.0}}});
    CHECK(both.beside == Approx(-7.0));
    CHECK(both.thrust == 0.0);
}

TEST_CASE("a tool without a level top is refused") {
    const tool::ArcOutline wedge =
        tool::round_corners({{{0.0, 0.0}, 0.0}, {{10.0, 20.0}, 0.0}, {{-10.0, 30.0}, 0.0}});
    CHECK_THROWS_AS(sections_of(wedge, HeldBy::top), OutOfRange);
}

TEST_CASE("what a steel may be asked to bear") {
    ToolSteel steel;
    steel.compressive_yield = 2100.0, steel.bending_strength = 2400.0;
    steel.safety_tension = 4.0, steel.safety_compression = 1.5;
    const Allowable allowed = allowables(steel);
    CHECK(allowed.tension == Approx(600.0));
    CHECK(allowed.compression == Approx(1400.0));
    CHECK(allowed.contact == Approx(2.8 * 2100.0));  // no hardness is given
    steel.safety_tension = 0.9;
    CHECK_THROWS_AS(allowables(steel), OutOfRange);
    CHECK(vickers_of_rockwell(60.0) == Approx(697.0));
    CHECK(vickers_of_rockwell(59.0) == Approx(675.0).epsilon(0.01));
    CHECK_THROWS_AS(vickers_of_rockwell(70.0), OutOfRange);
}
