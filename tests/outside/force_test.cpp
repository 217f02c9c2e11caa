// The force of a bend against shop rules.
//
//   P = k Rm L T^2 / W, k = 1.33 or 1.3, 0.7 for a U, 0.33 for wiping;  air bending of steel of Rm 450: 650
//   T^2/V kN per m;  ri = 0.16 V
//
// Here    ours is the greatest force of the strip pressed over an open die until it is free at 90 degrees,
//         nose 1 t, shoulders 1 t, friction 0.1, unless the example has more; taken to the example's strength
//         in proportion, from the card s235 (Rm 435) or, for aluminium, aluminium-5754-h22 (Rm 245). Force
//         per width grows with the size of a bend of one shape.
// Allowed 15 per cent: the rules leave radius, friction and hardening out. Inside radius 20 per cent.

#include <doctest/doctest.h>

#include "scenes/files/case/read_card.h"
#include "scenes/job/run/strip_bends.h"
#include "tests/outside/handbook.h"
#include "tests/outside/simulated_bends.h"
#include "tests/stop_at.h"

using namespace overbend;
using namespace overbend::tests;

namespace {

constexpr double rule = 0.15;

About about(const std::string& id, const char* source, const char* quantity, const char* unit) {
    return {"force of bends", source, id, quantity, unit};
}

// N per mm of width at 1 mm thickness and this strength.
double force_at(const char* card, double strength, double nose, double opening) {
    const double of_card = files::read_card(card, ".").tensile_strength;
    return vee_to_90(card, nose, opening).stroke.peak_force * strength / of_card;
}

// Greatest force of other bends of s235, N per mm of width at this strength: punch corners and die shoulders
// of 5 mm, clearance 1.1, thickness 1. The notes give the opening alone.
double peak_at(const job::StripStroke& stroke, double travel, double strength) {
    stroke::StrokeOptions options;
    options.record = false;
    const job::StripResult r = job::press_strip(stroke, stop_at(stroke::StopKind::travel, travel), options);
    CAPTURE(r.stroke.reason);
    REQUIRE(r.stroke.solved());
    return r.stroke.peak_force * strength / files::read_card("s235", ".").tensile_strength;
}

double wiping_force(double strength) {
    job::WipingBend b;
    b.material = files::read_card("s235", ".");
    b.edge_radius = b.corner_radius = 5.0;
    b.clearance = 1.1;
    b.flange = 25.0;
    return peak_at(job::wiping_stroke(b), 14.0, strength);
}

double channel_force(double strength) {
    job::ChannelBend b;
    b.material = files::read_card("s235", ".");
    b.clearance = 1.1;
    b.punch_width = 102.0 - 2.2;
    b.corner_radius = b.shoulder_radius = 5.0;
    b.depth = 20.0;
    b.flange = 30.0;
    return peak_at(job::channel_stroke(b), 14.0, strength);
}

}  // namespace

TEST_SUITE("outside") {
    TEST_CASE("the factor k of the handbooks' force, card by card") {
        std::vector<VeeSubject> subjects;
        for (const std::string& card : files::known_cards()) subjects.push_back({card, 1.0, 8.0});
        work_out(subjects);
        for (const std::string& card : files::known_cards()) {
            const double strength = files::read_card(card, ".").tensile_strength;
            compare(about("F-k-V " + card, "Groover; Seville notes", "factor k", ""),
                    handbook_row("F-k-V").number(1),
                    force_at(card.c_str(), strength, 1.0, 8.0) * 8.0 / strength, relative(rule));
        }
        const char* source = "Kalpakjian and Schmid; Groover";
        compare(about("F-k-U s235", source, "factor k", ""), handbook_row("F-k-U").number(),
                channel_force(1.0) * 102.0, relative(rule));
        compare(about("F-k-wiping s235", source, "factor k", ""), handbook_row("F-k-wiping").number(1),
                wiping_force(1.0) * 11.1, relative(rule));
    }

    TEST_CASE("worked forces") {
        const auto example = [](const char* id, const char* source, const char* card, double strength,
                                double width, double T, double opening, double nose) {
            compare(about(id, source, "force", "N"), handbook_row(id).number(),
                    width * T * force_at(card, strength, nose / T, opening / T), relative(rule));
        };
        example("F-SEV1V", "lecture notes, Seville", "s235", 500.0, 10.0, 1.0, 50.0, 1.0);
        example("F-SEV9", "exam, Seville 2015", "aluminium-5754-h22", 220.0, 40.0, 1.6, 20.0, 5.0);
        example("F-GR", "Groover 4e, ex. 20.2", "s235", 450.0, 44.5, 3.2, 25.0, 4.75);
        const char* notes = "lecture notes, Seville";
        compare(about("F-SEV1U", notes, "force", "N"), handbook_row("F-SEV1U").number(),
                10.0 * channel_force(500.0), relative(rule));
        compare(about("F-SEV1R", notes, "force", "N"), handbook_row("F-SEV1R").number(),
                10.0 * wiping_force(500.0), relative(rule));
    }

    TEST_CASE("the shop's rules of air bending") {
        const char* shop = "common practice";
        const auto per_metre = [&](const char* id, double reference, double T) {
            compare(about(id, shop, "force", "kN/m"), reference, T * force_at("s235", 450.0, 1.0, 8.0),
                    relative(rule));
        };
        per_metre("F-shop", 650.0 * 1.5 * 1.5 / 12.0, 1.5);  // the rule itself, between the rows below
        per_metre("F-shop-1-8", handbook_row("F-shop-1-8").number(), 1.0);
        per_metre("F-shop-2-16", handbook_row("F-shop-2-16").number(), 2.0);
        per_metre("F-shop-3-24", handbook_row("F-shop-3-24").number(), 3.0);
        for (const double nose : {0.5, 1.0, 1.5}) {
            const HandbookRow& row = handbook_row("SHOP-inner_radius");
            char name[60];
            std::snprintf(name, sizeof name, "%s nose %g t, V 8 t", row.id.c_str(), nose);
            compare({"inside radius of V bends", shop, name, "inside radius free", "mm"}, row.number() * 8.0,
                    vee_to_90("s235", nose, 8.0).inside_radius_free, relative(0.2));
        }
        const char* choice = "a rule for choosing tools or for drawing parts, which is left to the user";
        for (const char* id : {"SHOP-V_t", "SHOP-min_flange", "SHOP-DIN-type_leg_rule", "SHOP-hole_distance"})
            no_counterpart(about(id, shop, "rule", ""), choice);
    }

}  // TEST_SUITE
