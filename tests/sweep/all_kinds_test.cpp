// Random strokes of all kinds: nearly all end with a result, and a result that its own audit passes is not
// wrong.
//
// Here    200 strokes from a seed that is printed; OVERBEND_SWEEP_COUNT and OVERBEND_SWEEP_SEED give others:
//         3000 by hand.
// Checked at most 1 per cent end without a result. Every fourth is pressed once more with a mesh a quarter
//         finer and increments two thirds as large: where the audit passes (residue below 1 per cent) the
//         free angle agrees within 0.5 degree and 3 per cent of the loaded one, for a result may depend on
//         neither; one in a hundred may not. Not so a jam: where in the squeeze it ends is a limit that was
//         chosen.
// Measured  the first 300: 2 without a result, flanges of more than 100 thicknesses that peel off a flat
//         punch almost without friction. Of 75 pressed again 1 differs, by 2.4 degrees: an offset clamped
//         between its tools with friction 0.27.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <string>
#include <vector>

#include "sim/units.h"
#include "tests/on_all_cores.h"
#include "tests/stop_at.h"
#include "tests/sweep/random_strip.h"

using namespace overbend;
using tests::RandomStroke;

namespace {

struct Pressed {
    tests::Kind kind = tests::Kind::air_bending;
    std::string words;
    std::string missed;  // why there is no result; empty: there is one
    std::string outcome;
    double residue = 0.0, balance = 0.0;
    double loaded = 0.0, free = 0.0;  // of the first bend, degrees
    bool compared = false;
    double other_free = 0.0;
    std::string other_missed;
};

void press(std::uint64_t seed, double finer, Pressed& into) {
    try {
        const RandomStroke r = tests::random_stroke(seed, finer);
        into.kind = r.kind, into.words = r.words;
        stroke::StrokeOptions options;
        options.record = false;
        options.solver.largest_increment /= finer * finer;
        options.solver.curvature_increment /= finer * finer;
        const job::StripResult result = job::press_strip(r.stroke, r.stop, options);
        into.outcome = stroke::outcome_words(result.stroke.outcome);
        // That tools cannot take the force is an answer, as is that they are full.
        if (!result.stroke.solved() && result.stroke.outcome != stroke::Outcome::force_limit) {
            into.missed = into.outcome + ": " + result.stroke.reason;
            return;
        }
        into.residue = result.stroke.audit.residue_percent();
        into.balance = result.stroke.balance_error;
        into.loaded = result.bends.front().loaded / degree;
        into.free = result.bends.front().free / degree;
    } catch (const std::exception& e) {
        into.missed = std::string("refused: ") + e.what();
    }
}

int number_from(const char* name, int otherwise) {
    const char* text = std::getenv(name);
    return text != nullptr ? std::atoi(text) : otherwise;
}

std::vector<Pressed> press_all(int count, int seed) {
    std::vector<Pressed> all(count);
    tests::on_all_cores(count, [&](int i) {
        const std::uint64_t own = static_cast<std::uint64_t>(seed) * 1000000u + i;
        press(own, 1.0, all[i]);
        if (i % 4 != 3 || !all[i].missed.empty()) return;
        Pressed other;
        press(own, 1.25, other);
        all[i].compared = true;
        all[i].other_free = other.free, all[i].other_missed = other.missed;
    });
    return all;
}

struct Count {
    int drawn = 0, missed = 0, weak = 0, compared = 0, wrong = 0;
    double worst = 0.0;  // residue, per cent
};

}  // namespace

TEST_SUITE("sweep") {
    TEST_CASE("random strokes of all kinds end with a result that is not wrong") {
        const int count = number_from("OVERBEND_SWEEP_COUNT", 200),
                  seed = number_from("OVERBEND_SWEEP_SEED", 1);
        const std::vector<Pressed> all = press_all(count, seed);
        Count sums[tests::kinds];
        int missed = 0, wrong = 0;
        for (const Pressed& p : all) {
            Count& sum = sums[static_cast<int>(p.kind)];
            ++sum.drawn;
            CAPTURE(p.words);
            if (!p.missed.empty()) {
                ++sum.missed, ++missed;
                std::printf("no result: %s: %s\n", p.words.c_str(), p.missed.c_str());
                CHECK(p.missed.find("refused") == std::string::npos);
                continue;
            }
            sum.worst = std::max(sum.worst, p.residue);
            if (p.residue >= 1.0) {
                ++sum.weak;
                std::printf("residue %.2f %%: %s (%s)\n", p.residue, p.words.c_str(), p.outcome.c_str());
            }
            CHECK(p.balance < 1e-3);
            if (!p.compared || !p.other_missed.empty() || p.outcome != "reached") continue;
            ++sum.compared;
            const double off = std::abs(p.free - p.other_free),
                         allowed = std::max(0.5, 0.03 * std::abs(p.loaded));
            if (p.residue < 1.0 && off > allowed) {
                ++sum.wrong, ++wrong;
                std::printf("differs by %.2f of %.1f deg: %s (%s)\n", off, p.loaded, p.words.c_str(),
                            p.outcome.c_str());
            }
        }
        std::printf("%d random strokes, seed %d\n%-12s %6s %10s %14s %13s %9s %7s\n", count, seed, "kind",
                    "drawn", "no result", "residue > 1 %", "worst residue", "compared", "wrong");
        for (int k = 0; k < tests::kinds; ++k)
            std::printf("%-12s %6d %10d %14d %12.2f%% %9d %7d\n",
                        tests::kind_word(static_cast<tests::Kind>(k)), sums[k].drawn, sums[k].missed,
                        sums[k].weak, sums[k].worst, sums[k].compared, sums[k].wrong);
        CHECK(wrong <= std::max(1, count / 400));
        CHECK(missed <= std::max(1, count / 100));
    }

}  // TEST_SUITE
