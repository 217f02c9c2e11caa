// The law of a layer as kernels see it (kernels.h): plain data, with a row of numbers for everything that a
// layer has. What it says, and the names: layer_law.h.
//
// Units  MPa.

#pragma once

namespace overbend::material {

struct LaneLaw {
    double modulus = 0.0, shear_modulus = 0.0, modulus_a = 0.0, modulus_b = 0.0;
    double yield_a = 0.5, yield_b = 1.5;
    int backstresses = 0;
    double C[2] = {}, gamma[2] = {};
    // The flow curve: a smooth one's cells, eight numbers each (FlowCurve::Cubic).
    const double* cells = nullptr;
    long long first_cell = 0, cells_used = 0;
    double shift = 0.0;
    // Any curve at p: stress, slope and work.
    const void* curve = nullptr;
    void (*curve_at)(const void* curve, double p, double* point) = nullptr;
};

// What a layer starts an increment from (LayerStart), then what it answered last.
enum LayerRow {
    start_a,
    start_b,
    start_c,
    start_left,
    start_back_a,
    start_back_b,
    start_back_c,
    start_backs,  // a, b, c of each back stress
    start_accumulated = start_backs + 6,
    start_yield,
    start_yield_square,
    start_work,
    hoop_strain,
    shear_strain,
    hoop_stress,
    width_stress,
    shear_stress,
    flow,       // dp
    flow_hoop,  // its derivatives by the strains
    flow_shear,
    flow_a,
    flow_b,
    flow_c,
    law_rows
};

}  // namespace overbend::material
