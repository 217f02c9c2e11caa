// Cost by hand, group by group, and the curve over the batch. Arithmetic; the rates are invented.
//
// Strip 1 x 20 mm, blank 198 mm, 7850 kg/m3: with a gap of 2 mm 20 x 200 x 1 = 4000 mm3, 0.0314 kg, of which
// 2 per cent more are lost: 0.0314 / 0.98 = 0.0320408 kg. Part 0.031 kg.
//   material       0.0320408 x 3 - 0.0010408 x 0.3                                   = 0.09581 a part
//   cutting        (20 + 14.137) / 100 + 1 x 0.5 = 0.84137 s, / 3600 x 80            = 0.018697 a part
//   deburring      3 / 3600 x 45                                                     = 0.0375 a part
//   set-up         1000 s / 3600 x 75                                                = 20.8333 a batch
//   programming    900 / 3600 x 45                                                   = 11.25 a batch
//   trial parts    2 (0.09581 + 0.018697 + 0.833333)                                 = 1.89568 a batch
//   first article  600 / 3600 x 45                                                   = 7.5 a batch
//   pressing       6 x 2 + 6 x 3 + 10 = 40 s, / 3600 x (30 + 45)                     = 0.833333 a part
//   energy         (30 / 0.3 / 3.6e6 + 1 x 40 / 3600) x 0.25                         = 0.0027847 a part
//   tools          one made: design and programs 3 x 70, block 0.68 x 8, mill 0.5 x 60, wire 0.4 x 50, heat
//                  treatment 60 (0.42 x 6 = 2.52 is less), grinding 1.5 x 60, fitting 60: 475.44; one bought
//                  for 90                                                            = 565.44 a batch
//   tool wear      six strokes with the one, two with the other, 8 regrinds of 60:
//                  6 / 60000 x (480 + 475.44) / 9 + 2 / 60000 x (480 + 90) / 9
//                  = 0.0106160 + 0.0021111                                           = 0.0127271 a part
//   cleaning 0.02; inspection 10 x 0.05 / 3600 x 45 = 0.00625 a part
//   rejects        2 / 98 x (0.09581 + 0.018697 + 0.0375 + 0.833333 + 0.0027847 + 0.0127271 + 0.02 + 0.00625
//                  = 1.0271018)                                                      = 0.0209613 a part
//   packaging 0.02; storage 0.002 x 3 = 0.006 a part
//   overhead       15 per cent of 1.0740631 a part = 0.1611095, and of 606.91898 a batch = 91.03785

#include <doctest/doctest.h>

#include <cmath>
#include <random>

#include "sim/errors.h"
#include "sim/shop/cost.h"

using namespace overbend;
using namespace overbend::shop;
using doctest::Approx;

namespace {

JobFigures job() {
    JobFigures j;
    j.thickness = 1.0, j.width = 20.0, j.blank_length = 198.0, j.part_mass = 0.031;
    j.cutout_perimeters = 14.137, j.cutouts = 1;
    j.strokes = 6, j.press_cycles = 12.0, j.handling = 10.0, j.set_up = 1000.0, j.work = 30.0;
    ToolFigures made;
    made.name = "wedge", made.hardened = true, made.strokes = 6;
    made.stock.block_mass = 0.68, made.stock.mass = 0.42;
    made.stock.milling_hours = 0.5, made.stock.erosion_hours = 0.4;
    ToolFigures bought;
    bought.name = "block", bought.bought = 90.0, bought.strokes = 2;
    j.tools = {made, bought};
    return j;
}

const CostLine& line(const CostSheet& sheet, const std::string& group) {
    for (const CostLine& l : sheet.lines)
        if (l.group == group) return l;
    FAIL("there is no such group");
    return sheet.lines.front();
}

CostRates random_rates(std::mt19937& random) {
    std::uniform_real_distribution<double> any(0.1, 10.0);
    CostRates r;
    r.strip_per_kg = any(random), r.lay_in = any(random), r.press_per_hour = 10.0 * any(random);
    r.milling_per_hour = 20.0 * any(random), r.inspected = 0.1 * any(random), r.storage = 0.01 * any(random);
    r.tool_batches = 1 + static_cast<int>(any(random));
    return r;
}

}  // namespace

TEST_CASE("every group by hand") {
    const CostSheet s = cost_sheet({}, job());
    REQUIRE(s.lines.size() == 17);
    CHECK(line(s, "material").per_part.value == Approx(0.09581).epsilon(1e-4));
    CHECK(line(s, "cutting").per_part.value == Approx(0.018697).epsilon(1e-4));
    CHECK(line(s, "deburring").per_part.value == Approx(0.0375));
    CHECK(line(s, "set-up").per_batch.value == Approx(20.8333).epsilon(1e-5));
    CHECK(line(s, "programming").per_batch.value == Approx(11.25));
    CHECK(line(s, "trial parts").per_batch.value == Approx(1.89568).epsilon(1e-5));
    CHECK(line(s, "first article").per_batch.value == Approx(7.5));
    CHECK(line(s, "pressing").per_part.value == Approx(0.833333).epsilon(1e-5));
    CHECK(line(s, "energy").per_part.value == Approx(0.0027847).epsilon(1e-4));
    CHECK(line(s, "tools").per_batch.value == Approx(565.44));
    CHECK(line(s, "tool wear").per_part.value == Approx(0.0127271).epsilon(1e-5));
    CHECK(line(s, "cleaning").per_part.value == Approx(0.02));
    CHECK(line(s, "inspection").per_part.value == Approx(0.00625));
    CHECK(line(s, "rejects").per_part.value == Approx(0.0209613).epsilon(1e-5));
    CHECK(line(s, "packaging").per_part.value == Approx(0.02));
    CHECK(line(s, "storage").per_part.value == Approx(0.006));
    CHECK(line(s, "overhead").per_part.value == Approx(0.1611095).epsilon(1e-5));
    CHECK(line(s, "overhead").per_batch.value == Approx(91.03785).epsilon(1e-5));
    CHECK(s.variable == Approx(1.2351726).epsilon(1e-5));
    CHECK(s.fixed == Approx(697.95683).epsilon(1e-5));
    CHECK(s.press_time == 40.0);
    CHECK(s.strip_yield == Approx(0.031 / 0.0320408).epsilon(1e-5));
    // 1000 (30 / 0.3 / 3.6e6 + 40 / 3600) kWh
    CHECK(s.energy_per_thousand == Approx(11.1389).epsilon(1e-4));
    REQUIRE(s.tools.size() == 2);
    CHECK(s.tools[0].cost.value == Approx(475.44));
    CHECK(s.tools[1].cost.value == 90.0);
}

// 48 + 4 + 48 = 100 and 20: two blanks with one gap between them, and no gap at the sheet's edges.
TEST_CASE("gaps stand between blanks alone") {
    JobFigures j = job();
    j.blank_length = 48.0, j.width = 20.0, j.length_along_rolling = true;
    Sheet sheet;
    sheet.length = 100.0, sheet.width = 20.0;
    CHECK(blanks_on(sheet, j, 4.0) == 2);
    CHECK(blanks_on(sheet, j, 4.1) == 1);
}

// 565.44 of tools, by four batches: 141.36, and three quarters of them less with 15 per cent of overhead.
TEST_CASE("batches share the tools") {
    CostRates rates;
    rates.tool_batches = 4;
    const CostSheet s = cost_sheet(rates, job());
    CHECK(line(s, "tools").per_batch.value == Approx(141.36));
    CHECK(s.fixed == Approx(697.95683 - 0.75 * 565.44 * 1.15).epsilon(1e-5));
}

// Two tools of 6 and 4 kg: 60 for the heat treatment at 6 a kg, as much as the least charge of 60; of 80 they
// share 48 and 32, and an unhardened tool has none.
TEST_CASE("the least charge for heat treatment is that of all tools together") {
    JobFigures j = job();
    j.tools = {j.tools[0], j.tools[0], j.tools[0]};
    j.tools[0].stock.mass = 6.0, j.tools[1].stock.mass = 4.0, j.tools[2].stock.mass = 9.0;
    j.tools[2].hardened = false;
    const auto heat = [&](double least, int tool) {
        CostRates rates;
        rates.hardening_least = least;
        CostRates free = rates;
        free.hardening_least = 0.0, free.hardening_per_kg = 0.0;
        return cost_sheet(rates, j).tools[tool].cost.value - cost_sheet(free, j).tools[tool].cost.value;
    };
    CHECK(heat(60.0, 0) == Approx(36.0));
    CHECK(heat(60.0, 1) == Approx(24.0));
    CHECK(heat(80.0, 0) == Approx(48.0));
    CHECK(heat(80.0, 1) == Approx(32.0));
    CHECK(heat(80.0, 2) == 0.0);
}

// By thickness: 120 mm2/s is 60 mm/s at 2 mm, 20 mm / 60 / 3600 x 80; at 0.5 mm it would be 240, and 150 is
// the most. The case's own speed and price hold before the metal's.
TEST_CASE("the metal has its price and its cutting speed by thickness") {
    JobFigures j = job();
    j.cutouts = 0, j.cutout_perimeters = 0.0;
    j.strip_per_kg = 7.0, j.cutting_rate = 120.0;
    CostRates rates;
    CHECK(line(cost_sheet(rates, j), "material").per_part.value ==
          Approx(0.0320408 * 7.0 - 0.0010408 * 0.3).epsilon(1e-4));
    j.thickness = 2.0;
    CHECK(line(cost_sheet(rates, j), "cutting").per_part.value == Approx(20.0 / 60.0 / 3600.0 * 80.0));
    j.thickness = 0.5;
    CHECK(line(cost_sheet(rates, j), "cutting").per_part.value == Approx(20.0 / 150.0 / 3600.0 * 80.0));
    j.thickness = 1.0;
    rates.cutting_speed = 10.0, rates.strip_per_kg = 2.0;
    const CostSheet own = cost_sheet(rates, j);
    CHECK(line(own, "cutting").per_part.value == Approx(20.0 / 10.0 / 3600.0 * 80.0));
    CHECK(line(own, "material").per_part.value == Approx(0.0320408 * 2.0 - 0.0010408 * 0.3).epsilon(1e-4));
}

// A tool that is never reground is replaced after 1000 strokes: 6 / 1000 of it a part.
TEST_CASE("wear without regrinds, and none") {
    CostRates rates;
    rates.regrinds = 0, rates.regrind_strokes = 1000.0;
    CHECK(line(cost_sheet(rates, job()), "tool wear").per_part.value ==
          Approx(0.006 * 475.44 + 0.002 * 90.0));
    rates.regrind_strokes = 0.0;
    CHECK(line(cost_sheet(rates, job()), "tool wear").per_part.value == 0.0);
}

TEST_CASE("what a shop does not do costs nothing") {
    CostRates rates;
    rates.deburring = 0.0, rates.cleaning = 0.0, rates.packaging = 0.0, rates.rejected = 0.0;
    rates.programming = 0.0, rates.trial_parts = 0, rates.first_article = 0.0;
    rates.regrind_strokes = 0.0, rates.overhead = 0.0;
    const CostSheet s = cost_sheet(rates, job());
    for (const char* group : {"deburring", "cleaning", "packaging", "rejects", "programming", "trial parts",
                              "first article", "tool wear", "overhead"}) {
        CAPTURE(std::string(group));
        CHECK(line(s, group).per_part.value == 0.0);
        CHECK(line(s, group).per_batch.value == 0.0);
    }
    CHECK(s.variable == Approx(0.09581 + 0.018697 + 0.833333 + 0.0027847 + 0.00625 + 0.006).epsilon(1e-4));
    CHECK(s.fixed == Approx(20.8333 + 565.44).epsilon(1e-5));
}

// 1000 x 500 mm, blanks 198 x 20 with 2 mm between: 1002 / 200 = 5 along, 502 / 22 = 22 across: 110. Across
// the rolling direction 1002 / 22 = 45 and 502 / 200 = 2: 90.
TEST_CASE("blanks on a sheet") {
    JobFigures j = job();
    const Sheet sheet{1000.0, 500.0};
    CHECK(blanks_on(sheet, j, 2.0) == 110);
    j.length_along_rolling = false;
    CHECK(blanks_on(sheet, j, 2.0) == 90);
    CostRates rates;
    rates.sheet = sheet;
    const CostSheet s = cost_sheet(rates, job());
    CHECK(s.blanks_a_sheet == 110);
    // 3.925 kg / 110 / 0.98
    CHECK(line(s, "material").per_part.inputs[0].value == Approx(0.036410).epsilon(1e-4));
    // all round: (2 (20 + 198) + 14.137) / 100 + 2 x 0.5 = 5.50137 s
    CHECK(line(s, "cutting").per_part.value == Approx(5.50137 / 3600.0 * 80.0).epsilon(1e-5));
    rates.sheet = Sheet{100.0, 500.0};
    CHECK_THROWS_AS(cost_sheet(rates, job()), OutOfRange);
}

TEST_CASE("random rates: the curve falls, from all of it at one part to the part's own at a million") {
    std::mt19937 random(23);
    for (int trial = 0; trial < 100; ++trial) {
        const CostSheet s = cost_sheet(random_rates(random), job());
        double last = 1e300;
        for (const int batch : batches_up_to(1000000, 60)) {
            const double each = s.per_part(batch);
            CHECK(each < last);
            CHECK(each > s.variable);
            CHECK(s.of_batch(batch) == Approx(each * batch).epsilon(1e-12));
            last = each;
        }
        CHECK(s.per_part(1.0) == Approx(s.fixed + s.variable).epsilon(1e-12));
        CHECK(s.per_part(1e6) == Approx(s.variable).epsilon(1e-3));
    }
}

TEST_CASE("random rates: every line's figure is the sum that the sheet has") {
    std::mt19937 random(29);
    for (int trial = 0; trial < 50; ++trial) {
        const CostSheet s = cost_sheet(random_rates(random), job());
        double variable = 0.0, fixed = 0.0;
        for (const CostLine& l : s.lines) {
            variable += l.per_part.value, fixed += l.per_batch.value;
            CHECK(l.per_part.value >= 0.0);
            CHECK_FALSE(l.per_part.formula.empty());
            CHECK_FALSE(l.per_batch.formula.empty());
            if (l.per_part.value > 0.0) CHECK_FALSE(l.per_part.inputs.empty());
            if (l.per_batch.value > 0.0) CHECK(l.per_batch.inputs.size() >= 2);
        }
        CHECK(s.variable == Approx(variable));
        CHECK(s.fixed == Approx(fixed));
    }
}

// fixed 100 and 300, variable 2 and 1: 200 / 1 = 200 parts.
TEST_CASE("the batch from which another way is cheaper") {
    CostSheet a, b;
    a.fixed = 100.0, a.variable = 2.0, b.fixed = 300.0, b.variable = 1.0;
    const std::optional<BreakEven> at = break_even(a, b);
    REQUIRE(at);
    CHECK(at->batch == Approx(200.0));
    CHECK(at->cheaper_above == BreakEven::Above::second);
    CHECK(a.per_part(at->batch) == Approx(b.per_part(at->batch)));
    CHECK(a.per_part(199.0) < b.per_part(199.0));
    CHECK(a.per_part(201.0) > b.per_part(201.0));
    CHECK(break_even(b, a)->cheaper_above == BreakEven::Above::first);
    b.fixed = 90.0;  // cheaper throughout
    CHECK_FALSE(break_even(a, b));
    b = a;
    CHECK_FALSE(break_even(a, b));
}

TEST_CASE("batches of a curve rise from one to the most") {
    const std::vector<int> batches = batches_up_to(1000000, 40);
    CHECK(batches.front() == 1);
    CHECK(batches.back() == 1000000);
    for (std::size_t i = 1; i < batches.size(); ++i) CHECK(batches[i] > batches[i - 1]);
    CHECK(batches_up_to(1, 10) == std::vector<int>{1});
}
