#include "tests/outside/vee_rows.h"

#include <doctest/doctest.h>

#include "scenes/job/run/strip_bends.h"
#include "tests/outside/finite_element_cards.h"
#include "tests/outside/table.h"
#include "tests/stop_at.h"
#include "sim/units.h"

namespace overbend::tests {

namespace {

job::VeeResult bend_here(const VeeDeckBend& b) {
    job::VeeBend vee;
    vee.material = finite_element_card(b.card);
    vee.thickness = b.thickness;
    vee.die_opening = b.die_opening;
    vee.shoulder_radius = b.shoulder_radius;
    vee.nose_radius = b.nose_radius;
    vee.friction = b.friction;
    vee.flange = 0.8 * b.die_opening + 0.5 * b.thickness;
    return job::bend_vee(vee, stop_at(stroke::StopKind::travel, b.travel), {});
}

}  // namespace

void compare_vee_bend(const std::string& group, const std::string& source, const VeeDeckBend& bend,
                      const VeeDeckResult& theirs, double springback) {
    CAPTURE(bend.name);
    const job::VeeResult r = bend_here(bend);
    REQUIRE(r.stroke.outcome == stroke::Outcome::reached);
    CHECK(r.stroke.audit.residue_percent() < 1.0);
    const auto about = [&](const char* quantity, const char* unit) {
        return About{group, source, bend.name, quantity, unit};
    };
    compare(about("springback", "deg"), springback, (r.loaded - r.free) / degree, larger_of(0.15, 0.06),
            larger_of(0.1, 0.03));
    compare(about("included angle under load", "deg"), theirs.included_loaded, 180.0 - r.loaded / degree,
            absolute(2.2), absolute(0.7));
    compare(about("included angle free", "deg"), theirs.included_free, 180.0 - r.free / degree, absolute(2.2),
            absolute(0.7));
    compare(about("peak force", "N/mm"), theirs.peak_force, r.stroke.peak_force, relative(0.06),
            relative(0.03));
    compare(about("end force", "N/mm"), theirs.end_force, r.stroke.stop_force, relative(0.06),
            relative(0.03));
}

}  // namespace overbend::tests
