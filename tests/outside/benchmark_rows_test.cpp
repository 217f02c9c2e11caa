// Benchmarks of sheet bending whose measured angles could not be read, and trends of papers of which only the
// abstracts could.

#include <doctest/doctest.h>

#include "scenes/files/case/read_card.h"
#include "sim/units.h"
#include "tests/outside/handbook.h"
#include "tests/outside/simulated_bends.h"
#include "tests/outside/strengths.h"
#include "tests/stop_at.h"

using namespace overbend;
using namespace overbend::tests;

namespace {

// Springback in degrees of a V bend that ends free at a bend angle.
double springback(const material::Card& card, double thickness, double bend_degrees) {
    job::VeeBend vee;
    vee.material = card;
    vee.thickness = thickness;
    vee.die_opening = 12.0;
    stroke::StrokeOptions options;
    options.record = false;
    return springback_degrees(
        job::bend_vee(vee, stop_at(stroke::StopKind::free_angle, bend_degrees * degree), options));
}

}  // namespace

TEST_SUITE("outside") {
    TEST_CASE("inputs of benchmarks") {
        for (const char* beginning : {"NS93-", "NS02-"})
            for (const HandbookRow& row : handbook_rows(beginning))
                no_counterpart({"benchmarks", row.id[2] == '9' ? "Numisheet 93" : "Numisheet 2002", row.id,
                                "input", row.unit},
                               "what the benchmark is given; its measured angles are not known here");
    }

    TEST_CASE("trends") {
        const auto about = [](const char* id, const char* source) {
            return About{"trends", source, id, "springback", "deg"};
        };
        // The middles of EN 10338's ranges for HCT780X: 495 and 780 MPa.
        const material::Card dp600 = files::read_card("dp600", ".");
        const material::Card dp780 = hollomon_card(206e3, 0.3, 495.0, 780.0);
        const double plain = springback(dp600, 1.0, 90.0);
        const double stronger = springback(dp780, 1.0, 90.0);
        predict(about("TREND-1", "Umur 2020"), stronger, stronger > plain, handbook_row("TREND-1").quantity);
        const double thicker = springback(dp600, 1.5, 90.0);
        predict(about("TREND-2", "Umur 2020"), thicker, thicker < plain, handbook_row("TREND-2").quantity);
        const double less = springback(dp600, 1.0, 60.0);
        predict(about("TREND-3", "Umur 2020"), less, less < plain, handbook_row("TREND-3").quantity);
        no_counterpart(about("TREND-4", "Tekaslan 2006"), "time does not count: no creep, no relaxation");
        no_counterpart(about("TREND-5", "Tsutamori 2021"), "tools are rigid");
    }

}  // TEST_SUITE
