// Cautions on cracking against the tables of least radii: what a table allows raises no alarm, half of it
// does.
//
// Source  the rows of tests/outside/handbook.csv (DIN 6935, EN 10151, Aluminum Association; Kalpakjian and
//         Schmid from memory); strips of the cards that come along, bent in the air round a nose of the
//         table's radius, and of half of it, over an opening of 8 thicknesses or 4 noses.

#include <doctest/doctest.h>

#include <algorithm>
#include <cstdio>
#include <optional>
#include <string>

#include "scenes/files/case/read_card.h"
#include "scenes/files/case/read_case.h"
#include "scenes/job/run/job_rules.h"
#include "scenes/job/run/process.h"
#include "sim/plan/shop_rules.h"
#include "sim/units.h"
#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;

namespace {

// One V bend of 90 degrees; radii for reference, so that cracking alone is judged.
Case one_bend(const std::string& card, double thickness, double nose) {
    const double opening = std::max(8.0 * thickness, 4.0 * nose), flat = 1.5 * opening;
    const tests::OwnFolder folder;
    char text[2000];
    std::snprintf(
        text, sizeof text,
        "format = 1\ntitle = \"bend\"\n[strip]\nmaterial = \"%s\"\nthickness_mm = %g\nwidth_mm = 40\n"
        "[part]\npath = [ { flat_mm = %g }, { bend_deg = 90, inside_radius_mm = %g, "
        "radius_tolerance_mm = \"reference\" }, { flat_mm = %g } ]\n"
        "[[tool]]\nname = \"p\"\nkind = \"vee-punch\"\nangle_deg = 60\nnose_radius_mm = %g\n"
        "[[tool]]\nname = \"d\"\nkind = \"vee-die\"\nfaces = [ { angle_deg = 70, opening_mm = %g } ]\n"
        "[[step]]\nname = \"s\"\nbends = [\"bend 1\"]\npunch = \"p\"\ndie = \"d\"\n"
        "[run]\nlayers = 9\nelements_per_thickness = 6\n",
        card.c_str(), thickness, flat, nose, flat, nose, opening);
    return read_case(folder.write("case.toml", text));
}

bool alarms(const Findings& findings) {
    return std::any_of(findings.begin(), findings.end(), [](const Finding& f) {
        return f.severity != Severity::not_checked &&
               (f.rule == Rule::least_inside_radius || f.rule == Rule::outer_fibre_strain);
    });
}

}  // namespace

TEST_CASE("cracking: no alarm at the table's least radius, one at half of it, as bent") {
    int allowed = 0, false_alarms = 0, sharp = 0, misses = 0;
    for (const char* card : {"dc01", "dc04", "s235", "dp600", "stainless-1.4310", "aluminium-6061-t6",
                             "brass-cuzn37", "stainless-1.4301"})
        for (const double thickness : {0.5, 1.0, 2.0}) {
            std::string why_not;
            const material::Card metal = one_bend(card, thickness, thickness).material;
            const std::optional<plan::LeastRadius> least =
                plan::least_radius(metal, {thickness, 90.0 * degree, false}, why_not);
            if (!least || least->radius < 0.1) continue;
            for (const double share : {1.0, 0.5}) {
                const JobResult job = run_process(one_bend(card, thickness, share * least->radius), {});
                CAPTURE(card);
                CAPTURE(thickness);
                CAPTURE(share);
                if (!job.solved) continue;
                const bool alarm = alarms(job.findings);
                const double made = job.steps[0].bends[0].shape_free.inside_radius;
                if (share == 0.5 && made > plan::allowed_radius(*least)) continue;  // the die made it rounder
                (share == 1.0 ? allowed : sharp) += 1;
                if (share == 1.0 && alarm) ++false_alarms;
                if (share == 0.5 && !alarm) ++misses;
                if (alarm != (share == 0.5))
                    std::printf("  %s, %g mm, nose %.2f of %.2f mm: radius made %.2f\n", card, thickness,
                                share * least->radius, least->radius, made);
            }
        }
    std::printf("cracking: %d bends at the least radius, %d alarms; %d at half of it, %d without an alarm\n",
                allowed, false_alarms, sharp, misses);
    CHECK(allowed >= 12);
    CHECK(false_alarms == 0);
    CHECK(misses == 0);
}

TEST_CASE("cracking: spring-hard strip at a sharp nose is refused, mild steel at an ordinary one is not") {
    const JobResult hard = run_process(one_bend("spring-steel-c75s-hardened", 1.0, 1.0), {});
    REQUIRE(hard.solved);
    CHECK_FALSE(hard.feasible());
    CHECK(std::any_of(hard.findings.begin(), hard.findings.end(), [](const Finding& f) {
        return f.rule == Rule::outer_fibre_strain && f.severity == Severity::stops;
    }));
    CHECK_FALSE(alarms(run_process(one_bend("dc01", 1.0, 1.0), {}).findings));
}
