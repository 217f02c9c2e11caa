// Random V strokes to a free angle, over all cards and the range of tools: each must end with a result, and
// its energy must add up.
//
// Here    300 strokes from a fixed seed: thickness 0.3 to 6 mm, die opening 6 to 12 thicknesses, nose 0.3 to
//         3, shoulder 0.5 to 2.5, friction 0 to 0.2, free included angle 60 to 150 degrees; 11 layers; an
//         open die. In some 30 of them the strip fills the room between nose and shoulders before the angle
//         is reached: the result is then the bend as far as it goes, said to be jammed.
// Checked that 99 of 100 end with a result, whose work is accounted for within 1 per cent, and whose free
//         angle is the one asked for within 0.06 degree or short of it and jammed; that each jam is one by
//         geometry; and that what ends without a result has folded to an edge or says where no equilibrium is
//         found.
// Measured  the first 500: all, of which 34 are jammed; worst residue 0.62 per cent.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <string>
#include <vector>

#include "scenes/files/case/read_card.h"
#include "scenes/job/run/strip_bends.h"
#include "sim/errors.h"
#include "sim/units.h"
#include "tests/on_all_cores.h"
#include "tests/stop_at.h"
#include "tests/sweep/numbers.h"

using namespace overbend;

namespace {

struct Subject {
    job::VeeBend vee;
    double free_included = 0.0;  // degrees
    bool jammed = false;
    std::string missed;    // why there is no result; empty: there is one
    double residue = 0.0;  // per cent
    double off = 0.0;      // free angle less the one asked for, degrees
};

std::vector<Subject> draw(int count) {
    const std::vector<std::string> names = files::known_cards();
    std::vector<material::Card> cards;
    cards.reserve(names.size());
    for (const std::string& name : names) cards.push_back(files::read_card(name, "."));
    tests::Numbers numbers(20240229);
    std::vector<Subject> all(count);
    for (int i = 0; i < count; ++i) {
        Subject& s = all[i];
        s.vee.material = cards[i % cards.size()];
        s.vee.thickness = numbers.log_between(0.3, 6.0);
        s.vee.die_opening = s.vee.thickness * numbers.between(6.0, 12.0);
        s.vee.nose_radius = s.vee.thickness * numbers.between(0.3, 3.0);
        s.vee.shoulder_radius = s.vee.thickness * numbers.between(0.5, 2.5);
        s.vee.friction = numbers.between(0.0, 0.2);
        s.vee.layers = 11;
        s.free_included = numbers.between(60.0, 150.0);
    }
    return all;
}

// What the tools allow, by geometry alone: when the strip fills the room between nose and shoulder, half the
// bend angle's sine is half the opening over nose + thickness + shoulder. In degrees of bend angle.
double sharpest(const job::VeeBend& b) {
    const double sine = 0.5 * b.die_opening / (b.nose_radius + b.thickness + b.shoulder_radius);
    return sine < 1.0 ? 2.0 * std::asin(sine) / degree : 180.0;
}

void bend(Subject& s) {
    const stroke::Stop stop =
        tests::stop_at(stroke::StopKind::free_angle, (180.0 - s.free_included) * degree);
    stroke::StrokeOptions options;
    options.record = false;
    try {
        const job::VeeResult r = job::bend_vee(s.vee, stop, options);
        s.residue = r.stroke.audit.residue_percent();
        s.off = (r.free - stop.value) / degree;
        s.jammed = r.stroke.outcome == stroke::Outcome::jammed;
        if (!s.jammed && r.stroke.outcome != stroke::Outcome::reached)
            s.missed = std::string(stroke::outcome_words(r.stroke.outcome)) + ": " + r.stroke.reason;
    } catch (const std::exception& e) {
        s.missed = std::string("refused: ") + e.what();
    }
}

}  // namespace

TEST_SUITE("sweep") {
    TEST_CASE("random V strokes end with a result, and their energy adds up") {
        std::vector<Subject> all = draw(300);
        tests::on_all_cores(static_cast<int>(all.size()), [&](int i) { bend(all[i]); });

        int results = 0, jams = 0;
        double worst = 0.0;
        for (const Subject& s : all) {
            char text[200];
            std::snprintf(text, sizeof text,
                          "%s t %.2f opening %.2f nose %.2f shoulder %.2f friction %.3f to %.1f deg",
                          s.vee.material.name.c_str(), s.vee.thickness, s.vee.die_opening, s.vee.nose_radius,
                          s.vee.shoulder_radius, s.vee.friction, s.free_included);
            CAPTURE(std::string(text));
            if (!s.missed.empty()) {
                std::printf("%s: %s\n", text, s.missed.c_str());
                CHECK(s.missed.find("refused") == std::string::npos);
                continue;
            }
            ++results;
            if (!s.jammed) {
                worst = std::max(worst, s.residue);
                CHECK(s.residue < 1.0);
                CHECK(std::abs(s.off) < 0.06);
                continue;
            }
            ++jams;
            CHECK(s.off < 0.0);
            // Springback and the play that the shoulders' own rounding leaves: within a sixth of the limit.
            CHECK(180.0 - s.free_included > 0.83 * sharpest(s.vee));
        }
        std::printf(
            "random V strokes: %d of %zu end with a result, %d of them jammed; worst residue of the others "
            "%.2f %%\n",
            results, all.size(), jams, worst);
        CHECK(100 * results >= 99 * static_cast<int>(all.size()));
    }

}  // TEST_SUITE
