// The layers' law for four at a time (sim/material/respond_four.h) by itself, for its check.

#pragma once

#include "sim/material/lane_law.h"

namespace overbend::tests {

// What four layers answer, besides what stands in their rows.
struct FourAnswers {
    double tangent[4], cross_tangent[4], shear_tangent[4], energy[4];
};

// rows: law_rows of four numbers. hoop, shear: four each.
using FourLayers = FourAnswers(const material::LaneLaw& law, double* rows, const double* hoop,
                               const double* shear);
FourLayers four_layers_sse2, four_layers_avx2;

}  // namespace overbend::tests
