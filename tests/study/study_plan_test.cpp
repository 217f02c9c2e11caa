// What a study's rows are: columns, factors, correlation, and a case with their values.

#include <doctest/doctest.h>

#include <cmath>

#include "scenes/files/case/tool_sizes.h"
#include "scenes/job/run/spread.h"
#include "scenes/job/study/distribution.h"
#include "sim/errors.h"
#include "tests/study/small_study.h"

using namespace overbend;

TEST_CASE("study plan: a point's rows are A, B and one for each factor") {
    const files::Case c = tests::vee_case_of_study();
    const job::StudyPlan plan = job::plan_study(c, tests::small_study(c, 4));
    REQUIRE(plan.factors.size() == 5);
    CHECK(plan.rows() == 4 * 7);
    for (std::uint64_t point = 0; point < 4; ++point) {
        const std::vector<double> a = job::row_values(plan, 7 * point),
                                  b = job::row_values(plan, 7 * point + 1);
        for (std::size_t f = 0; f < plan.factors.size(); ++f) {
            const std::vector<double> mixed = job::row_values(plan, 7 * point + 2 + f);
            for (std::size_t column = 0; column < a.size(); ++column)
                CHECK(mixed[column] == (column == f ? b : a)[column]);
        }
    }
}

TEST_CASE("study plan: the usual distributions have the ranges that the program states for angles") {
    const files::Case c = tests::vee_case_of_study();
    const job::Ranges ranges = job::ranges_of(c);
    const job::StudyPlan plan = job::plan_study(c, tests::small_study(c, 4));
    const double range[] = {ranges.thickness, ranges.strength, ranges.friction};
    for (std::size_t i = 0; i < 3; ++i) {
        const auto& normal = std::get<files::Normal>(plan.columns[i].spread);
        CHECK(normal.deviation * job::deviations_to_end == doctest::Approx(range[i]));
        CHECK(*normal.within == doctest::Approx(range[i]));
        CHECK(normal.mean == plan.columns[i].nominal);
    }
}

// Of 4096 points, the correlation of normal scores of thickness and strength. Allowed 0.01; measured 0.0005.
TEST_CASE("study plan: correlated inputs are one factor, and vary together as stated") {
    const files::Case c = tests::vee_case_of_study();
    files::Study study = tests::small_study(c, 4096);
    for (std::size_t i = 0; i < 2; ++i) study.inputs[i].spread = files::Normal{1.0, 0.02};
    study.correlations = {{0, 1, -0.6}};
    const job::StudyPlan plan = job::plan_study(c, study);
    REQUIRE(plan.factors.size() == 4);
    CHECK(plan.factors[0].correlated);
    CHECK(plan.factors[0].name == "thickness_mm with strength");
    double together = 0.0, one = 0.0, other = 0.0;
    for (std::uint64_t k = 0; k < 4096; ++k) {
        const std::vector<double> v =
            job::row_values(plan, k * static_cast<std::uint64_t>(plan.rows_a_point()));
        together += (v[0] - 1.0) * (v[1] - 1.0), one += (v[0] - 1.0) * (v[0] - 1.0),
            other += (v[1] - 1.0) * (v[1] - 1.0);
    }
    CHECK(std::abs(together / std::sqrt(one * other) + 0.6) < 0.01);
    study.correlations = {{0, 1, 0.9}, {1, 2, 0.9}, {0, 2, -0.9}};
    CHECK_THROWS_AS(job::plan_study(c, study), OutOfRange);
}

TEST_CASE("study plan: a case takes on the values") {
    const files::Case c = tests::vee_case_of_study();
    files::Study study = tests::small_study(c, 4);
    for (const files::Vary what :
         {files::Vary::modulus, files::Vary::r_value, files::Vary::ram_zero, files::Vary::blank}) {
        files::Input input;
        input.what = what, input.name = files::vary_word(what);
        study.inputs.push_back(input);
    }
    files::Input nose;
    nose.what = files::Vary::tool_size, nose.tool = 0, nose.name = "nose";
    const std::vector<files::ToolSize> sizes = files::sizes_of(c.tools[0]);
    for (std::size_t i = 0; i < sizes.size(); ++i)
        if (sizes[i].key == "nose_radius_mm") nose.size = static_cast<int>(i);
    REQUIRE(nose.size >= 0);
    study.inputs.push_back(nose);
    const job::StudyPlan plan = job::plan_study(c, study);
    const std::vector<double> values = {1.03, 1.1, 0.12, 0.01, 0.2, 1.02, 1.4, 0.005, 0.3, 2.2};
    const job::VariedCase varied = job::vary(plan, values);
    CHECK(varied.c.thickness == 1.03);
    CHECK(varied.c.run.friction == 0.12);
    CHECK(varied.c.steps[0].shift == 0.2);
    CHECK(varied.deeper[0] == doctest::Approx(0.015));
    CHECK(varied.longer == 0.3);
    CHECK(varied.c.material.r_value == 1.4);
    CHECK(varied.c.material.youngs_modulus == doctest::Approx(1.02 * c.material.youngs_modulus));
    CHECK(files::sizes_of(varied.c.tools[0])[static_cast<std::size_t>(nose.size)].value == 2.2);
    CHECK(plan.c.run.layers == study.layers);
}

TEST_CASE("study plan: a grid has all combinations, the last one fastest") {
    const files::Case c = tests::vee_case_of_study();
    files::Study study = tests::small_study(c, 4);
    study.inputs.clear();
    files::Input friction, thickness;
    friction.what = files::Vary::friction, friction.name = "friction";
    thickness.what = files::Vary::thickness, thickness.name = "thickness_mm";
    study.grids = {{friction, {0.05, 0.1}}, {thickness, {0.9, 1.0, 1.1}}};
    const job::StudyPlan plan = job::plan_study(c, study);
    REQUIRE(plan.rows() == 6);
    CHECK(job::row_values(plan, 0) == std::vector<double>{0.05, 0.9});
    CHECK(job::row_values(plan, 2) == std::vector<double>{0.05, 1.1});
    CHECK(job::row_values(plan, 3) == std::vector<double>{0.1, 0.9});
}
