// What a stroke gives must not hang on the mesh, the layers, the increments and the contact's stiffness.
//
// Here    t 1 mm, opening 8, nose and shoulders 1, 2 mm of travel (some 70 degrees of bend), flanges of 20
//         and 200 mm, a metal that hardens and one that does not. Against the default: elements half as long;
//         twice the layers; increments of travel and curvature halved; contact twice and half as stiff.
// Allowed 0.1 degree of the free angle, 2 per cent of the peak force.
// Measured  0.062 degree (layers doubled), 0.05 (contact half as stiff); peak force 0.5 per cent.

#include <doctest/doctest.h>

#include <cmath>
#include <cstdio>
#include <functional>
#include <string>
#include <vector>

#include "sim/units.h"
#include "tests/stroke/strip_metals.h"

using namespace overbend;
using namespace overbend::tests;

namespace {

struct Change {
    const char* name;
    std::function<void(job::VeeBend&, stroke::StrokeOptions&)> make;
};

const std::vector<Change> changes = {
    {"mesh halved", [](job::VeeBend& b, stroke::StrokeOptions&) { b.elements_per_thickness = 16.0; }},
    {"layers doubled", [](job::VeeBend& b, stroke::StrokeOptions&) { b.layers = 30; }},
    {"increments halved",
     [](job::VeeBend&, stroke::StrokeOptions& o) {
         o.solver.largest_increment *= 0.5;
         o.solver.curvature_increment *= 0.5;
     }},
    {"contact stiffness x 2",
     [](job::VeeBend&, stroke::StrokeOptions& o) { o.solver.contact_stiffness *= 2.0; }},
    {"contact stiffness x 0.5",
     [](job::VeeBend&, stroke::StrokeOptions& o) { o.solver.contact_stiffness *= 0.5; }}};

job::VeeResult bend(const job::VeeBend& vee, stroke::StrokeOptions options) {
    options.record = false;
    job::VeeResult r = job::bend_vee(vee, stop_at(stroke::StopKind::travel, 2.0), options);
    REQUIRE(r.stroke.outcome == stroke::Outcome::reached);
    return r;
}

}  // namespace

TEST_SUITE("stroke") {
    TEST_CASE("finer mesh, layers, increments and other contact stiffness change little") {
        for (const material::Card& card : {hardening_metal(), perfectly_plastic_metal()})
            for (const double flange : {20.0, 200.0}) {
                job::VeeBend vee = plain_bend();
                vee.material = card;
                vee.flange = flange;
                const job::VeeResult plain = bend(vee, {});
                std::printf("%s, flange %.0f mm: free %.3f deg, peak %.2f N/mm\n", card.name.c_str(), flange,
                            plain.free / degree, plain.stroke.peak_force);
                for (const Change& change : changes) {
                    CAPTURE(card.name);
                    CAPTURE(flange);
                    CAPTURE(std::string(change.name));
                    job::VeeBend changed = vee;
                    stroke::StrokeOptions options;
                    change.make(changed, options);
                    const job::VeeResult r = bend(changed, options);
                    const double angle = (r.free - plain.free) / degree;
                    const double force = r.stroke.peak_force / plain.stroke.peak_force - 1.0;
                    std::printf("    %-24s free %+.4f deg, peak %+.2f %%\n", change.name, angle,
                                100.0 * force);
                    CHECK(std::abs(angle) < 0.1);
                    CHECK(std::abs(force) < 0.02);
                }
            }
    }

}  // TEST_SUITE
