// The innermost loops over an element's layers (sections.h), compiled once for each instruction set, as in
// sim/material/kernels.h: plain data.
//
// Units  N, mm, 1/mm.

#pragma once

#include "sim/material/kernels.h"
#include "sim/material/lane_law.h"

namespace overbend::stroke {

// Rows of an element's layers: those of the law, then what its energy is made of.
enum ElementRow {
    fibre_start = material::law_rows,  // l_0^2
    skew_start,                        // C_0
    square_by,                         // of lambda^2 by (G, k, c_1, c_2)
    square_Gc = square_by + 2 + material::warps,
    square_kc = square_Gc + material::warps,
    // Derivatives of the layer's energy by lambda^2 (S), eta and u', N.
    by_S = square_kc + material::warps,
    by_eta,
    by_SS,
    by_S_eta,
    by_S_slope,
    by_eta_eta,
    by_eta_slope,
    by_slope_slope,
    element_rows
};

// An element in the state that is evaluated. Its section has the mean c of its nodes.
struct ElementState {
    material::HeldSection section;
    double g = 0.0, k = 0.0, warp[material::warps] = {};
    double length = 0.0;
    const material::HeightRows* node[2] = {};  // heights at its nodes
    // Of the section's layers, a row each.
    const double* height = nullptr;
    const double* weight = nullptr;
    const double* shape[material::warps] = {};        // psi_j
    const double* shape_slope[material::warps] = {};  // psi_j'
    int padded = 0;                                   // numbers in a row
    double* rows = nullptr;                           // element_rows of them
};

// The strains of an element's energy: its own, then those of the sections at its nodes.
constexpr int own_count = 3 + material::warps, node_count = 2 + material::warps;
constexpr int element_strains = own_count + 2 * node_count;
constexpr int hessian_rows = 16;  // element_strains with some to spare

struct ElementGradient {
    bool folded = false;
    double energy = 0.0;  // over the length
    double active = 0.0;  // moment of the layers that have flowed
    double by[hessian_rows];
};

struct ElementKernels {
    // An increment begins: l_0^2 and C_0, and `along`, what resists the warp's change along the element (11,
    // 12 and 22), with the flow that stands in the rows as the one to come.
    void (*start)(const material::LaneLaw& law, const ElementState& of, double* along);
    void (*gradient)(const material::LaneLaw& law, const ElementState& of, ElementGradient& to);
    // In the state of the last gradient; columns of hessian_rows, from the diagonal on down.
    void (*hessian)(const ElementState& of, double* hessian);
};
const ElementKernels& element_kernels();

const ElementKernels& element_kernels_sse2();
const ElementKernels& element_kernels_avx2();

}  // namespace overbend::stroke
