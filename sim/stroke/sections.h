// The sections' term of an increment's energy: sum L (W + 1/2 S g^2) over the elements.
//
// W(G, k) is the potential of N and M from the layers' history at the increment's start (section.h of
// sim/material), g the element's shear (sim/strip/beam_element.h), S = 5/6 shear modulus x thickness.
//
// Shapes  length, strain, active: one an element. starts, flow: layers, element by element.
// Units   mm, N per mm of width; energy N.

#pragma once

#include <optional>
#include <vector>

#include "sim/material/section.h"
#include "sim/strip/beam_element.h"
#include "sim/strip/strip_state.h"
#include "sim/stroke/equations.h"

namespace overbend::stroke {

struct Sections {
    std::vector<material::LayerStart> starts;  // layers at the increment's start
    std::vector<double> flow;                  // of the layers' last evaluation; 0 before the first
    std::vector<double> active;  // of each element's moment what layers carry that have flowed, N mm per mm
};

double shear_stiffness(const material::LayerLaw& law, double thickness);  // S, N per mm

// An increment begins from the strip's history.
void start_sections(const material::LayerLaw& law, const strip::StripState& strip, Sections& sections);

// Returns the energy; none when a section is folded: `to` is then incomplete.
std::optional<double> add_sections(const material::LayerLaw& law, const strip::StripState& strip,
                                   const std::vector<double>& length,
                                   const std::vector<strip::ElementStrain>& strain, Sections& sections,
                                   Equations& to);

}  // namespace overbend::stroke
