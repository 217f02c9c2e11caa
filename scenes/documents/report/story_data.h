// The storyboard's and the charts' data, filled from a case and its result. What is made points into the
// result's recordings, which must outlive it. Strokes that were not solved are left out of the storyboard;
// charts are to be asked for solved strokes alone.

#pragma once

#include <vector>

#include "render/chart/cost_over_batch.h"
#include "render/chart/force_travel.h"
#include "render/chart/moment_curvature.h"
#include "render/chart/stress_through_thickness.h"
#include "render/report/storyboard.h"
#include "scenes/files/case/case.h"
#include "scenes/job/run/process.h"
#include "scenes/job/shop/shop.h"

namespace overbend::documents {

report::Storyboard storyboard_data(const files::Case& c, const job::JobResult& job);

// Limits of press and tools in a step, on the strip's width: the rated force of the press, what its holders
// and the step's tools are rated for per metre. Those alone that the case knows.
std::vector<chart::ForceLimit> force_limits(const files::Case& c, const files::Step& step);

// step: index into the case's and the result's steps.
chart::ForceTravel force_travel_data(const files::Case& c, const job::JobResult& job, int step);

// All bends of the step, each at its section of greatest curvature between the middles of its flats.
chart::MomentCurvature moment_curvature_data(const files::Case& c, const job::JobResult& job, int step);

// bend: index into the part's bends, one of the step's.
chart::StressThroughThickness stress_data(const files::Case& c, const job::JobResult& job, int step,
                                          int bend);

// Batches of one part to a million: the case's own curve, with its title, and that of the alternative if
// there is one.
chart::CostOverBatch cost_over_batch_data(const files::Case& c, const job::ShopReport& shop);

}  // namespace overbend::documents
