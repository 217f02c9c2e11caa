// The sections' term of an increment's energy: sum L W over the elements, with W the sum over the layers of
// weight times potential from the layers' history at the increment's start (sim/material/layer_law.h).
//
// A layer runs along (lambda, eta) in the section's directions and a line across the strip along
// (u', 1/lambda): lambda its stretch without slope (sim/material/section_shape.h), u' = sum_j psi_j' phi_j,
//   eta = g + dy/ds + k u
// the layer's slope, dy/ds the difference of its heights at both nodes over L. So its strains are
//   e = ln(l^2)/2,  l^2 = lambda^2 + eta^2,   dgamma = C l_0^2/l^2 - C_0,  C = lambda u' + eta/lambda
// with C the product of both directions and 0 the increment's start: the rate of dgamma is that of the shear
// strain in axes that go with the layer. Shear stress does work where heights change along the strip, as
// under a nose, and lowers the hoop stress at which a layer yields.
//
// The warp changes along an element. Its energy is taken to second order about the middle,
//   L/24 sum_jk (dphi_j2 - dphi_j1) (dphi_k2 - dphi_k1) int G^ lambda_0^2 psi_j' psi_k' dz
// with G^ the shear modulus that a layer shows if it flows as in the last increment: what two points of
// integration along the element would feel, at the price of one. Ten times as much or a third changes no
// figure of the V strokes of tests/outside by more than 2 per cent.
//
// Shapes  length, active: one an element. What is of layers: element by element.
// Units   mm, N per mm of width; energy N.

#pragma once

#include <Eigen/Core>
#include <optional>
#include <vector>

#include "sim/material/layer_law.h"
#include "sim/strip/strip_state.h"
#include "sim/stroke/element_kernels.h"
#include "sim/stroke/equations.h"
#include "sim/stroke/strip_strains.h"

namespace overbend::stroke {

struct Sections {
    int padded = 0;            // numbers in a row, see element_kernels.h
    std::vector<double> rows;  // element_rows of every element: how its layers started the increment
                               // and what they answered last
    std::vector<Eigen::Matrix2d> along;  // of each element's second term, N per mm of length
    std::vector<double> active;  // of each element's moment what layers carry that have flowed, N mm per mm
    double* rows_of(int element) { return &rows[static_cast<std::size_t>(element) * element_rows * padded]; }
    double& at(int element, int row, int layer) { return rows_of(element)[row * padded + layer]; }
};

// The slope eta of a layer of an element.
double layer_slope(const material::SectionShape& shape, const StripStrains& strains, double length,
                   int element, int layer);

// An increment begins from the strip's history and strains. expected_flow: of every layer, as far as it can
// be foreseen; empty: none.
void start_sections(const material::LayerLaw& law, const material::SectionShape& shape,
                    const strip::StripState& strip, const std::vector<double>& length,
                    const StripStrains& strains, const std::vector<double>& expected_flow,
                    Sections& sections);

// Takes the last evaluation over as the history of an element's layers. stress, width_stress: theirs at the
// increment's start, replaced. flow: set. Returns the plastic work by the trapezoidal rule, N mm per mm width
// and mm length.
double advance_layers(const material::LayerLaw& law, const material::SectionShape& shape, int element,
                      Sections& sections, material::LayerHistory* history, double* stress,
                      double* width_stress, double* flow);

struct SectionsSum {
    double energy = 0.0;  // of the layers
    double along = 0.0;   // of the warp's change along the elements
};
// Energy and gradient. strains: at the state that is evaluated, whose unknowns are u; before: those at the
// increment's start. None when a section is folded: `to` is then incomplete.
std::optional<SectionsSum> add_sections(const material::LayerLaw& law, const material::SectionShape& shape,
                                        const std::vector<double>& length, const StripStrains& strains,
                                        const std::vector<double>& before, const std::vector<double>& u,
                                        Sections& sections, Equations& to);
// The hessian, in the state of the last gradient.
void add_section_hessians(const material::SectionShape& shape, const std::vector<double>& length,
                          const StripStrains& strains, Sections& sections, Equations& to);

}  // namespace overbend::stroke
