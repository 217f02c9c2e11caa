// What the terms of an increment's energy add up to: its gradient and its hessian by all unknowns, those of
// every node (sim/strip/beam_element.h), then the compression of every spring.
//
// Each term is a function of its own that adds its part to these and returns its energy: sections.h,
// contact.h, self_contact.h, spring_force.h, weight.h, hold.h and length_scale.h. IncrementSolver sums them,
// and then takes over what they have added by strains.
//
// Units  mm, rad, N per mm of width.

#pragma once

#include <algorithm>
#include <vector>

#include "sim/strip/beam_element.h"
#include "sim/stroke/band_solve.h"
#include "sim/stroke/border.h"
#include "sim/stroke/strain_sums.h"
#include "sim/stroke/strip_strains.h"

namespace overbend::stroke {

struct Equations {
    std::vector<double> gradient;  // of the energy by every unknown
    BandMatrix matrix;             // second derivatives by the nodes' unknowns
    Border border;                 // and those that a spring's compression has a part in
    StrainSums by_strains;         // what is still to be taken over

    void resize(int nodes, int springs) {
        gradient.assign(strip::node_unknowns * nodes + springs, 0.0);
        matrix.resize(strip::node_unknowns * nodes);
        border.resize(springs, strip::node_unknowns * nodes);
        by_strains.clear(nodes - 1);
    }
    void clear() {
        std::fill(gradient.begin(), gradient.end(), 0.0);
        matrix.clear();
        border.clear();
        by_strains.clear(static_cast<int>(by_strains.elements.size()));
    }
    // Takes over what terms have added by strains. length: of the elements, mm. The hessian needs the
    // gradient's sums too; it is taken over where it is to be solved with.
    void take_over_gradient(const StripStrains& strains, const std::vector<double>& length);
    void take_over_hessian(const StripStrains& strains, const std::vector<double>& length);
    // Where spring i's compression stands among the unknowns.
    int of_spring(int i) const { return matrix.size() + i; }
};

}  // namespace overbend::stroke
