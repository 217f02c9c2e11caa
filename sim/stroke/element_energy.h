// The energy of an element's layers by the strains that make it: its own and those of the sections at its nodes
// (sections.h).
//
// Units  N per mm of width and length, mm, 1/mm.

#pragma once

#include <Eigen/Core>

#include "sim/stroke/sections.h"

namespace overbend::stroke {

// Places of the strains that an element's energy knows, in this order since lambda^2 knows the first eight: G
// and k of the element, the warps' gradients of the element before it, of its own and of the one behind it; then g
// and the warps; then G and k of the element before it and of the one behind.
constexpr int own_strain = 0;
constexpr int gradient_strain = 2;
constexpr int slope_strain = gradient_strain + 3 * material::warps;
constexpr int warp_strain = slope_strain + 1;
constexpr int beside_strain = warp_strain + material::warps;
constexpr int element_strains = beside_strain + 4;
constexpr int strain_rows = element_strains + 1;  // one more, always 0, that processors take them in pairs

struct ElementEnergy {
    double energy = 0.0;
    double active = 0.0;  // see Sections
    Eigen::Matrix<double, strain_rows, 1> gradient;
    Eigen::Matrix<double, strain_rows, strain_rows> hessian;  // without what heights at the nodes curve
};

// squares: of the element's section. node_share: a layer each, of both nodes, is added to: d energy/dy.
ElementEnergy element_energy(const material::LayerLaw& law, const material::SectionShape& shape,
                             const StripStrains& strains, double length,
                             const material::LayerSquares& squares, int element, Sections& sections,
                             double* const node_share[2]);

}  // namespace overbend::stroke
