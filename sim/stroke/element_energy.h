// The energy of an element's layers by the strains that make it: its own and those of the sections at its
// nodes (sections.h).
//
// Units  N, mm, 1/mm.

#pragma once

#include "sim/stroke/sections.h"
#include "sim/stroke/strain_sums.h"

namespace overbend::stroke {

// The element as kernels see it; points into all of these.
ElementState element_state(const material::SectionShape& shape, const StripStrains& strains, double length,
                           int element, Sections& sections);

struct ElementEnergy {
    bool folded = false;  // a layer has no stretch left: there is no such section
    double energy = 0.0;  // over the length
};
// Adds the element's gradient to `sums`; its layers' answers stay in `sections`.
ElementEnergy add_element_gradient(const material::LaneLaw& law, const material::SectionShape& shape,
                                   const StripStrains& strains, double length, int element,
                                   Sections& sections, StrainSums& sums);

// Adds the element's hessian in the state of the last gradient, but for what heights at the nodes curve.
void add_element_hessian(const material::SectionShape& shape, const StripStrains& strains, double length,
                         int element, Sections& sections, StrainSums& sums);

}  // namespace overbend::stroke
