// Distributions of what varies: the value below which a share of all lies, and the density.

#pragma once

#include "scenes/files/study/study.h"

namespace overbend::job {

// share above 0 and below 1.
double quantile(const files::Distribution& spread, double share);

// Per unit of the value; 0 outside.
double density(const files::Distribution& spread, double value);

// Mean; of one without a single middle the mean all the same.
double mean_of(const files::Distribution& spread);

// Of the standard normal distribution.
double normal_quantile(double share);
double normal_share(double value);

}  // namespace overbend::job
