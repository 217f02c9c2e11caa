// A section's force and moment from its layers (section.h), for an increment without shear: a kernel, see
// kernels.h.
//
// Units  mm, 1/mm, MPa; N in N per mm width, M in N mm per mm width.

#pragma once

#include "sim/material/kernels.h"
#include "sim/material/lane_law.h"

namespace overbend::material {

struct SectionLayers {
    const double* height = nullptr;  // rows of `padded`
    const double* weight = nullptr;
    int padded = 0;
    double* rows = nullptr;                // law_rows of them
    const double* slope_square = nullptr;  // of every layer against the section's normal
};

struct SectionSums {
    bool folded = false;
    double N = 0.0, M = 0.0, N_G = 0.0, N_k = 0.0, M_k = 0.0;
};

using SectionLaw = void(const LaneLaw& law, const SectionLayers& of, const HeldSection& at, SectionSums& to);
SectionLaw section_law, section_law_sse2, section_law_avx2;

}  // namespace overbend::material
