// The flat pattern: bend allowances.
//
//   allowance by the mechanics = corner of the drawing along the mid-line - (made corner - blank that went
//   into it)
//
// Here    two checks from outside: the mechanics' own k-factor in pure bending is 0.41 to 0.48 (see the
//         manual's table), so that a bend made to about its drawn radius takes about angle (r + k s); and a
//         case without steps is by DIN 6935 alone, whose v for r = 1 and s = 1 at 90 degrees Tabellenbuch
//         Metall prints as 1.9 (from memory).
// Allowed up to 10 per cent less than that, and no more than that: an air bend is no arc, its flanks are
//         curved towards the shoulders, which shortens the way between the legs. Measured 5.8.

#include <doctest/doctest.h>

#include <cmath>

#include "scenes/files/case/read_case.h"
#include "scenes/job/run/flat_pattern.h"
#include "sim/units.h"
#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;

namespace {

Case small() {
    const tests::OwnFolder folder;
    return read_case(folder.write("case.toml", tests::small_case));
}

}  // namespace

TEST_CASE("flat pattern: by the mechanics a bend takes about its arc at the unstretched layer") {
    const Case c = small();
    const FlatPattern pattern = flat_pattern(c, {});
    REQUIRE(pattern.simulated);
    CHECK(pattern.lines == BendLines::fitted);
    for (const FlatBend& b : pattern.bends) {
        const Bend& bend = c.part.bends[b.bend];
        const double arc = std::abs(bend.angle) * (bend.inside_radius + 0.45 * c.thickness);
        CHECK(b.mechanics < arc);
        CHECK(b.mechanics > 0.9 * arc);
        CHECK(b.mid_stretch > 0.0);
        CHECK(b.made_radius > 0.0);
    }
    CHECK(std::abs(pattern.mechanics - pattern.blank.length) < 0.02);
}

// Drawn sharper or rounder than the tools make it, a bend has another corner, and the blank stays what it is:
// the allowance moves by what the flats beside it do not, 2 tan(angle/2) a millimetre of radius.
TEST_CASE("flat pattern: the drawing's radius moves the allowance with the corner") {
    Case c = small();
    const double before = flat_pattern(c, {}).bends[0].mechanics;
    for (Bend& bend : c.part.bends) bend.inside_radius = 2.4;
    const double after = flat_pattern(c, {}).bends[0].mechanics;
    CHECK(after - before ==
          doctest::Approx(2.0 * std::tan(0.5 * std::abs(c.part.bends[0].angle))).epsilon(0.02));
}

TEST_CASE("flat pattern: without steps by DIN 6935 and the handbook alone") {
    Case c = small();
    c.steps.clear();
    for (Bend& bend : c.part.bends) bend.angle = 0.5 * pi, bend.inside_radius = 1.0;
    c.cutouts = {{8.1, 10.0, 3.0, 3.0}, {22.0, 10.0, 3.0, 3.0}};
    const FlatPattern pattern = flat_pattern(c, {});
    CHECK_FALSE(pattern.simulated);
    CHECK(pattern.job.findings.empty());  // nothing was made that could be measured
    CHECK(pattern.lines != BendLines::fitted);
    CHECK(pattern.mechanics == 0.0);
    for (const FlatBend& b : pattern.bends) {
        CHECK(b.mechanics == 0.0);
        CHECK(std::abs(2.0 * 2.0 - b.din - 1.9) < 0.05);
        CHECK(b.handbook == doctest::Approx(0.64 + 1.57));  // soft steel, Machinery's Handbook
    }
    CHECK(pattern.blank.length == doctest::Approx(pattern.din));
    CHECK(pattern.mass_g > 0.0);
    REQUIRE(pattern.cutouts.size() == 2);
    CHECK(pattern.cutouts[0].too_near());  // 2.4 mm from the end of 12 mm of flat
    CHECK_FALSE(pattern.cutouts[1].too_near());
    CHECK(pattern.cutouts[0].least == 2.5);
}

// A slot of 8 x 3 takes pi/4 3^2 + 5 x 3 = 22.07 mm2 out of the blank, whichever way it lies.
TEST_CASE("flat pattern: a slot takes as much out across the strip as along it") {
    Case c = read_case("cases/one-bend-dc01/case.toml");
    const Blank blank = make_blank(c);
    const double whole = blank_mass(c, blank);
    for (const Cutout& slot : {Cutout{15.0, 12.0, 3.0, 8.0}, Cutout{15.0, 12.0, 8.0, 3.0}}) {
        c.cutouts = {slot};
        CHECK(whole - blank_mass(c, blank) ==
              doctest::Approx((0.25 * pi * 9.0 + 15.0) * c.thickness * c.material.density * 1e-6));
    }
}
