// A section of the strip: axial force and moment per mm of width from mid-line stretch and curvature.
//
// Exact incompressible plane-strain bending: the layer at reference height z has the squared stretch
//   lambda_z^2 = G^2 - 2 z k,   e = 1/2 ln lambda_z^2,   height in the bent strip y(z) = 2 z / (G + lambda_z)
// and by virtual work with s = sigma_hoop - sigma_radial
//   N = int s G / lambda_z^2 dz,   M = - int s z / lambda_z^2 dz.
// N = 0 is the radial equilibrium of a strip with free surfaces. Thinning, the shift of the neutral layer and
// the k-factor follow; none is put in. Where warp grows along the strip, lambda_z^2 has terms of it too
// (section_shape.h), and N and M are the derivatives of the same energy by G and k.
//
// Units   mm, 1/mm, MPa; N in N per mm width, M in N mm per mm width, energy in N mm per mm width and mm
//         length.
// Source  R. Hill, The Mathematical Theory of Plasticity, Oxford 1950, bending of a wide sheet (from memory).

#pragma once

#include "sim/material/layer_law.h"
#include "sim/material/section_shape.h"

namespace overbend::material {

struct SectionResponse {
    double N = 0.0, M = 0.0;
    double N_G = 0.0, N_k = 0.0, M_k = 0.0;  // derivatives; the tangent is symmetric
    double energy = 0.0;                     // potential of N and M from the history at the increment's start
    bool folded = false;                     // lambda_z^2 <= 0 somewhere: no such section; all else is 0
};

// The section at E, in an increment without shear or slopes that started from the layers' history.
SectionResponse respond(const LayerLaw& law, const SectionShape& shape, const LayerHistory* was,
                        const SectionStrain& E);

// Takes E over: writes the layers' history after the increment in place, and returns the plastic work done in
// it by the trapezoidal rule, N mm per mm width and mm length. stress, width_stress: of the layers at the
// increment's start, replaced by those at its end.
double advance(const LayerLaw& law, const SectionShape& shape, LayerHistory* history, double* stress,
               double* width_stress, const SectionStrain& E);

// Elastic energy of a section from its layers' stresses, N mm per mm width and mm length.
double elastic_energy(const LayerLaw& law, const SectionShape& shape, const LayerHistory* history,
                      const double* stress, const double* width_stress);

// Stretch and curvature at which an undisturbed section carries neither axial force nor moment; its warp, its
// slopes and its shear stay. E: where it is. slope_square: of every layer against the section's normal, which
// stretches it too: e = ln(lambda^2 + slope^2)/2; none: 0.
struct FreeSection {
    double G = 1.0, k = 0.0;
    bool solved = false;
};
FreeSection release(const LayerLaw& law, const SectionShape& shape, const LayerHistory* was,
                    const SectionStrain& E, const double* slope_square);

}  // namespace overbend::material
