// A study laid out: what varies, as columns and as things that are judged together, and what every row is.
//
// Rows by chance  For each of the study's points two samples, A and B, of all columns together; where the
//                 importance is wanted also, for every factor, A with that factor's columns from B
//                 (A. Saltelli et al., "Variance based sensitivity analysis of model output", Comput. Phys.
//                 Commun. 181 (2010) 259-270, from memory). A point's rows follow one another: A, B, the
//                 factors in turn. Row k is the same wherever it is run.
// Rows of a grid  All combinations, the last grid fastest.
// Correlation     of the normal scores (a Gaussian copula); inputs that vary together are one factor.

#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "scenes/files/study/study.h"
#include "scenes/job/run/process.h"

namespace overbend::job {

struct StudyColumn {
    std::string name;  // unique
    files::Input input;
    int step = -1;               // of what varies for each stroke on its own
    files::Distribution spread;  // of a grid not used
    bool usual = false;          // the spread is the usual one, see usual_spread
    double nominal = 0.0;        // of the nominal strip
};

struct StudyFactor {
    std::string name;
    std::vector<int> columns;
    bool correlated = false;
};

struct StudyPlan {
    files::Case c;  // as it is run: with the study's mesh
    files::Study study;
    std::vector<StudyColumn> columns;
    std::vector<StudyFactor> factors;  // of a grid none
    std::vector<double> scores;        // columns^2, row by row: lower triangle that correlates normal scores

    bool is_grid() const { return !study.grids.empty(); }
    int rows_a_point() const { return 2 + (study.importance ? static_cast<int>(factors.size()) : 0); }
    std::uint64_t rows() const;
};

// Throws OutOfRange: correlations that cannot be together.
StudyPlan plan_study(const files::Case& c, const files::Study& study);

// What it is without a study's own: normal, the range of ranges_of(c) cut off at its ends, which are
// deviations_to_end deviations away; of ram and gauge 0.02 and 0.1 mm, of a blank's length 0.1 mm, of a
// tool's size 0.02 mm or 0.1 degree, of the modulus 3 per cent, of the r-value 15 per cent, all of these
// common practice, no source.
files::Distribution usual_spread(const files::Case& c, const files::Input& input);
// Of the nominal strip.
double nominal_value(const files::Case& c, const files::Input& input);

// One a column.
std::vector<double> row_values(const StudyPlan& plan, std::uint64_t row);

// Which of a point's rows it is: 0 A, 1 B, 2 and on with factor 0 and on from B.
int part_of_point(const StudyPlan& plan, std::uint64_t row);

// The case with these values, and what the ram's height is off in each step. Throws OutOfRange: tools that
// cannot be made so.
struct VariedCase {
    files::Case c;
    std::vector<double> deeper;  // mm, one a step
    double longer = 0.0;         // mm, of the blank at its right end
};
VariedCase vary(const StudyPlan& plan, const std::vector<double>& values);

}  // namespace overbend::job
