// Shares with intervals, Cp and Cpk.

#include <doctest/doctest.h>

#include <cmath>

#include "scenes/job/study/scatter.h"

using namespace overbend;

// Wilson's interval of 8 of 10 is 0.4902 to 0.9433 (E. B. Wilson, J. Am. Stat. Assoc. 22 (1927) 209-212,
// worked out by hand), of 0 of 10 it is 0 to 0.2775.
TEST_CASE("scatter: the interval of a share") {
    const job::Share some = job::share_of(8.0, 10.0);
    CHECK(some.value == 0.8);
    CHECK(some.low == doctest::Approx(0.4902).epsilon(1e-3));
    CHECK(some.high == doctest::Approx(0.9433).epsilon(1e-3));
    const job::Share none = job::share_of(0.0, 10.0);
    CHECK(std::abs(none.low) < 1e-12);
    CHECK(none.high == doctest::Approx(0.2775).epsilon(1e-3));
    CHECK(job::share_of(0.0, 0.0).high == 1.0);
}

// Ten values about 90.2 with a deviation of 0.3 by construction: Cp = 1 / 0.9, Cpk = 0.8 / 0.9.
TEST_CASE("scatter: Cp and Cpk") {
    job::StudyPlan plan;
    plan.study.samples = 5;
    plan.study.importance = false;
    job::StudySize size;
    size.drawn = 90.0, size.allowed = 1.0;
    std::vector<job::StudyRow> rows(10);
    const double step = 0.3 * std::sqrt(9.0 / 10.0);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        rows[i].number = i, rows[i].solved = rows[i].good = true;
        rows[i].sizes = {90.2 + (i % 2 == 0 ? step : -step)};
    }
    rows[9].good = false, rows[9].why = "angle";
    const job::StudyResult result = job::study_result(plan, {size}, rows);
    CHECK(result.sizes[0].deviation == doctest::Approx(0.3));
    CHECK(*result.sizes[0].cp == doctest::Approx(1.0 / 0.9));
    CHECK(*result.sizes[0].cpk == doctest::Approx(0.8 / 0.9));
    CHECK(*result.sizes[0].within == 1.0);
    CHECK(result.good.value == 0.9);
    REQUIRE(result.why.size() == 1);
    CHECK(result.why[0].first == "angle");
}
