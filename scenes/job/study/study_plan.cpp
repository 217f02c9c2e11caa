#include "scenes/job/study/study_plan.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "scenes/files/case/tool_sizes.h"
#include "scenes/job/run/spread.h"
#include "scenes/job/study/distribution.h"
#include "scenes/job/study/sobol_points.h"
#include "sim/errors.h"
#include "sim/units.h"

namespace overbend::job {

namespace {

using files::Vary;

bool for_each_stroke(Vary what) {
    return what == Vary::ram || what == Vary::gauge;
}

void add_columns(const files::Input& input, StudyPlan& plan) {
    StudyColumn column;
    column.input = input;
    column.nominal = nominal_value(plan.c, input);
    column.usual = !input.spread;
    column.spread = input.spread ? *input.spread : usual_spread(plan.c, input);
    column.name = input.name;
    column.step = input.step.value_or(-1);
    if (!for_each_stroke(input.what) || input.step) return plan.columns.push_back(column);
    for (std::size_t i = 0; i < plan.c.steps.size(); ++i) {
        if (input.what == Vary::ram && plan.c.steps[i].stop == files::StopKind::force) continue;
        column.step = static_cast<int>(i);
        column.name = input.name + " of '" + plan.c.steps[i].name + "'";
        plan.columns.push_back(column);
    }
}

// Inputs that are correlated, directly or through others, are one factor.
void add_factors(StudyPlan& plan, const std::vector<std::vector<int>>& columns_of) {
    const std::size_t inputs = plan.study.inputs.size();
    std::vector<std::size_t> first(inputs);
    for (std::size_t i = 0; i < inputs; ++i) first[i] = i;
    for (std::size_t again = 0; again < inputs; ++again)
        for (const files::Correlation& c : plan.study.correlations) {
            std::size_t &a = first[static_cast<std::size_t>(c.a)], &b = first[static_cast<std::size_t>(c.b)];
            a = b = std::min(a, b);
        }
    for (std::size_t i = 0; i < inputs; ++i) {
        if (first[i] != i) continue;
        StudyFactor factor;
        for (std::size_t j = i; j < inputs; ++j) {
            if (first[j] != i) continue;
            factor.name += (factor.name.empty() ? "" : " with ") + plan.study.inputs[j].name;
            factor.correlated = factor.correlated || j > i;
            factor.columns.insert(factor.columns.end(), columns_of[j].begin(), columns_of[j].end());
        }
        if (!factor.columns.empty()) plan.factors.push_back(factor);
    }
}

void add_scores(StudyPlan& plan, const std::vector<std::vector<int>>& columns_of) {
    const auto n = static_cast<Eigen::Index>(plan.columns.size());
    Eigen::MatrixXd matrix = Eigen::MatrixXd::Identity(n, n);
    for (const files::Correlation& c : plan.study.correlations) {
        const int a = columns_of[static_cast<std::size_t>(c.a)].front();
        const int b = columns_of[static_cast<std::size_t>(c.b)].front();
        matrix(a, b) = matrix(b, a) = c.coefficient;
    }
    const Eigen::LLT<Eigen::MatrixXd> factored(matrix);
    if (factored.info() != Eigen::Success)
        throw OutOfRange("correlations of the study", "they cannot all hold together",
                         "give smaller coefficients");
    const Eigen::MatrixXd lower = factored.matrixL();
    for (Eigen::Index i = 0; i < n; ++i)
        for (Eigen::Index j = 0; j < n; ++j) plan.scores.push_back(lower(i, j));
}

// Of one sample: shares of the columns, made to vary together, as values.
std::vector<double> values_of(const StudyPlan& plan, const std::vector<double>& shares) {
    const std::size_t n = plan.columns.size();
    std::vector<double> values(n);
    for (std::size_t i = 0; i < n; ++i) {
        double share = shares[i];
        if (!plan.study.correlations.empty()) {
            double score = 0.0;
            for (std::size_t j = 0; j <= i; ++j) score += plan.scores[i * n + j] * normal_quantile(shares[j]);
            share = std::clamp(normal_share(score), 1e-16, 1.0 - 1e-16);
        }
        values[i] = quantile(plan.columns[i].spread, share);
    }
    return values;
}

}  // namespace

std::uint64_t StudyPlan::rows() const {
    if (!is_grid())
        return static_cast<std::uint64_t>(study.samples) * static_cast<std::uint64_t>(rows_a_point());
    std::uint64_t count = 1;
    for (const files::Grid& grid : study.grids) count *= grid.values.size();
    return count;
}

double nominal_value(const files::Case& c, const files::Input& input) {
    switch (input.what) {
        case Vary::thickness:
            return c.thickness;
        case Vary::strength:
        case Vary::modulus:
            return 1.0;
        case Vary::r_value:
            return c.material.r_value;
        case Vary::friction:
            return c.run.friction;
        case Vary::tool_size: {
            const files::ToolSize size = files::sizes_of(c.tools[static_cast<std::size_t>(input.tool)])
                                             .at(static_cast<std::size_t>(input.size));
            return size.unit == files::SizeUnit::rad ? size.value / degree : size.value;
        }
        case Vary::ram:
        case Vary::ram_zero:
        case Vary::gauge:
        case Vary::blank:
            break;
    }
    return 0.0;
}

files::Distribution usual_spread(const files::Case& c, const files::Input& input) {
    const double middle = nominal_value(c, input);
    const Ranges ranges = ranges_of(c);
    double range = 0.0;
    switch (input.what) {
        case Vary::thickness:
            range = ranges.thickness;
            break;
        case Vary::strength:
            range = ranges.strength;
            break;
        case Vary::friction:
            range = std::min({ranges.friction, middle > 0.0 ? middle : ranges.friction, 0.3 - middle});
            break;
        case Vary::modulus:
            range = 0.03;
            break;
        case Vary::r_value:
            range = 0.15 * middle;
            break;
        case Vary::ram:
        case Vary::ram_zero:
            range = 0.02;
            break;
        case Vary::gauge:
        case Vary::blank:
            range = 0.1;
            break;
        case Vary::tool_size: {
            const auto& tool = c.tools[static_cast<std::size_t>(input.tool)];
            const bool angle =
                files::sizes_of(tool).at(static_cast<std::size_t>(input.size)).unit == files::SizeUnit::rad;
            range = angle ? 0.1 : 0.02;
            break;
        }
    }
    if (!(range > 0.0)) range = 1e-6;
    return files::Normal{middle, range / deviations_to_end, range};
}

StudyPlan plan_study(const files::Case& c, const files::Study& study) {
    StudyPlan plan;
    plan.c = c, plan.study = study;
    plan.c.run.layers = study.layers, plan.c.run.elements_per_thickness = study.elements_per_thickness;
    if (plan.is_grid()) {
        for (const files::Grid& grid : study.grids) {
            StudyColumn column;
            column.name = grid.of.name, column.input = grid.of, column.step = grid.of.step.value_or(-1);
            column.nominal = nominal_value(c, grid.of);
            plan.columns.push_back(column);
        }
        return plan;
    }
    std::vector<std::vector<int>> columns_of;
    for (const files::Input& input : study.inputs) {
        const std::size_t before = plan.columns.size();
        add_columns(input, plan);
        columns_of.emplace_back();
        for (std::size_t i = before; i < plan.columns.size(); ++i)
            columns_of.back().push_back(static_cast<int>(i));
    }
    add_factors(plan, columns_of);
    add_scores(plan, columns_of);
    return plan;
}

int part_of_point(const StudyPlan& plan, std::uint64_t row) {
    return plan.is_grid() ? 0 : static_cast<int>(row % static_cast<std::uint64_t>(plan.rows_a_point()));
}

std::vector<double> row_values(const StudyPlan& plan, std::uint64_t row) {
    std::vector<double> values(plan.columns.size());
    if (plan.is_grid()) {
        for (std::size_t g = values.size(); g-- > 0;) {
            const std::vector<double>& list = plan.study.grids[g].values;
            values[g] = list[row % list.size()], row /= list.size();
        }
        return values;
    }
    const std::size_t n = values.size();
    const std::uint64_t point = row / static_cast<std::uint64_t>(plan.rows_a_point());
    const std::vector<double> both = sobol_point(static_cast<int>(2 * n), point, plan.study.series);
    const auto half = both.begin() + static_cast<std::ptrdiff_t>(n);
    const std::vector<double> a(both.begin(), half), b(half, both.end());
    const int part = part_of_point(plan, row);
    values = values_of(plan, part == 1 ? b : a);
    if (part < 2) return values;
    const std::vector<double> other = values_of(plan, b);
    for (const int column : plan.factors[static_cast<std::size_t>(part - 2)].columns)
        values[static_cast<std::size_t>(column)] = other[static_cast<std::size_t>(column)];
    return values;
}

VariedCase vary(const StudyPlan& plan, const std::vector<double>& values) {
    VariedCase varied{plan.c, plan.study.deeper, 0.0};
    files::Case& c = varied.c;
    varied.deeper.resize(c.steps.size(), 0.0);
    for (std::size_t i = 0; i < values.size(); ++i) {
        const StudyColumn& column = plan.columns[i];
        const double value = values[i];
        const auto each_step = [&](auto change) {
            for (std::size_t s = 0; s < c.steps.size(); ++s)
                if (column.step < 0 || column.step == static_cast<int>(s)) change(s);
        };
        switch (column.input.what) {
            case Vary::thickness:
                c.thickness = value;
                break;
            case Vary::strength:
                c.material = material::with_strength(c.material, value);
                break;
            case Vary::modulus:
                c.material.youngs_modulus *= value;
                if (c.material.modulus_drop) c.material.modulus_drop->to *= value;
                break;
            case Vary::r_value:
                c.material.r_value = value;
                break;
            case Vary::friction:
                c.run.friction = value;
                break;
            case Vary::ram:
            case Vary::ram_zero:
                each_step([&](std::size_t s) { varied.deeper[s] += value; });
                break;
            case Vary::gauge:
                each_step([&](std::size_t s) { c.steps[s].shift += value; });
                break;
            case Vary::blank:
                varied.longer += value;
                break;
            case Vary::tool_size: {
                files::Tool& tool = c.tools[static_cast<std::size_t>(column.input.tool)];
                const files::ToolSize size =
                    files::sizes_of(tool).at(static_cast<std::size_t>(column.input.size));
                files::set_size(tool, column.input.size,
                                size.unit == files::SizeUnit::rad ? value * degree : value);
                break;
            }
        }
    }
    return varied;
}

}  // namespace overbend::job
