// The energy of an element's layers by the strains that make it: its own and those of the sections at its
// nodes (sections.h).
//
// Units  N, mm, 1/mm.

#pragma once

#include "sim/stroke/sections.h"
#include "sim/stroke/strain_sums.h"

namespace overbend::stroke {

// Adds the element's gradient to `sums` and sets its layers' energies in `sections`, whose squares are those
// of the state. Returns the energy over the length.
double add_element_gradient(const material::LayerLaw& law, const material::SectionShape& shape,
                            const StripStrains& strains, double length, int element, Sections& sections,
                            StrainSums& sums);

// Adds the element's hessian in the state of the last gradient, but for what heights at the nodes curve.
void add_element_hessian(const material::SectionShape& shape, const StripStrains& strains, double length,
                         int element, const Sections& sections, StrainSums& sums);

}  // namespace overbend::stroke
