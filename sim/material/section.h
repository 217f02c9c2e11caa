// A section of the strip: axial force and moment per mm of width from mid-line stretch and curvature.
//
// Exact incompressible plane-strain bending: the layer at reference height z has the squared stretch
//   lambda_z^2 = G^2 - 2 z k,   e = 1/2 ln lambda_z^2,   height in the bent strip y(z) = 2 z / (G + lambda_z)
// and by virtual work with tau = sigma_hoop - sigma_radial
//   N = int tau G / lambda_z^2 dz,   M = - int tau z / lambda_z^2 dz.
// N = 0 is the radial equilibrium of a strip with free surfaces. Thinning, the shift of the neutral layer and
// the k-factor follow; none is put in.
//
// Units   mm, 1/mm, MPa; N in N per mm width, M in N mm per mm width, energy in N mm per mm width and mm
//         length.
// Source  R. Hill, The Mathematical Theory of Plasticity, Oxford 1950, bending of a wide sheet (from memory).

#pragma once

#include <vector>

#include "sim/material/layer_law.h"

namespace overbend::material {

// Layers of a section: heights and weights of Gauss-Legendre points over [-t/2, t/2], rising.
// count: 3 to 64.
struct Layers {
    std::vector<double> height;  // mm
    std::vector<double> weight;  // mm, sum = thickness
};
Layers gauss_layers(double thickness, int count);

struct SectionResponse {
    double N = 0.0, M = 0.0;
    double N_G = 0.0, N_k = 0.0, M_k = 0.0;  // derivatives; the tangent is symmetric
    double energy = 0.0;                     // potential of N and M from the history at the increment's start
    double active = 0.0;  // moment of the layers that yield or have yielded, |.|, N mm per mm
    bool folded = false;  // lambda_z^2 <= 0 somewhere: no such section; all else is 0
};

// The section at stretch G and curvature k, in an increment that started at `was`. heights, weights, was,
// flow: `count` of them. flow: of the layers' last evaluation in this increment, 0 before the first; it is
// replaced.
SectionResponse respond(const LayerLaw& law, const double* heights, const double* weights, int count,
                        const LayerStart* was, double* flow, double G, double k);

// The same from the layers' history, `count` of them, for a single evaluation.
SectionResponse respond(const LayerLaw& law, const double* heights, const double* weights, int count,
                        const LayerHistory* was, double G, double k);

// Writes the layers' history after the increment to G, k in place, and returns the plastic work done in it by
// the trapezoidal rule, N mm per mm width and mm length. stress, width_stress: `count` layer stresses at the
// increment's start, replaced by those at its end.
// was, flow: as in respond.
double advance(const LayerLaw& law, const double* heights, const double* weights, int count,
               const LayerStart* was, const double* flow, LayerHistory* history, double* stress,
               double* width_stress, double G, double k);
double advance(const LayerLaw& law, const double* heights, const double* weights, int count,
               LayerHistory* history, double* stress, double* width_stress, double G, double k);

// Elastic energy of a section from its layers' stresses, N mm per mm width and mm length.
double elastic_energy(const LayerLaw& law, const double* weights, int count, const LayerHistory* history,
                      const double* stress, const double* width_stress);

// Stretch and curvature at which an undisturbed section carries neither axial force nor moment.
struct FreeSection {
    double G = 1.0, k = 0.0;
    bool solved = false;
};
FreeSection release(const LayerLaw& law, const double* heights, const double* weights, int count,
                    const LayerHistory* was, double G, double k);

}  // namespace overbend::material
