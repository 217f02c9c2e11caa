// What the rows of a study say of each size, and of parts as a whole.
//
//   Cp = allowed / (3 s),   Cpk = (allowed - |mean - drawn|) / (3 s),   s the standard deviation
// Source  ISO 22514-2 (from memory), for a tolerance that is the same either way; they say most of sizes that
//         are distributed normally.
// Share   of good parts with E. B. Wilson's 95 per cent interval, as of samples by chance; evenly drawn
//         points are nearer to the truth than that.

#pragma once

#include <optional>
#include <vector>

#include "scenes/job/study/importance.h"
#include "scenes/job/study/study_rows.h"

namespace overbend::job {

struct SizeScatter {
    double mean = 0.0, deviation = 0.0;
    double least = 0.0, low = 0.0, middle = 0.0, high = 0.0,
           most = 0.0;             // low, high: of the middle 95 per cent
    std::optional<double> within;  // share; of judged sizes
    std::optional<double> cp, cpk;
    std::vector<FactorImportance> importance;  // one a factor; empty: it does not vary, or was not asked for
};

// Of n, k: share and interval.
Share share_of(double k, double n);

struct StudyResult {
    std::vector<SizeScatter> sizes;                        // one a size
    Share good;                                            // of the samples
    std::size_t samples = 0;                               // rows A and B, or of a grid all
    std::size_t not_solved = 0;                            // of all rows
    std::vector<std::pair<std::string, std::size_t>> why;  // reasons of parts that are not good, most first
};

// rows: all of the study's, in their order.
StudyResult study_result(const StudyPlan& plan, const std::vector<StudySize>& sizes,
                         const std::vector<StudyRow>& rows);

// The rows that are samples by chance of all columns: A and B.
std::vector<const StudyRow*> sample_rows(const StudyPlan& plan, const std::vector<StudyRow>& rows);

}  // namespace overbend::job
