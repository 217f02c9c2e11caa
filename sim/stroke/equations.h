// What the terms of an increment's energy add up to: its gradient and its hessian by all unknowns, those of
// every node (sim/strip/beam_element.h), then the compression of every spring.
//
// Each term is a function of its own that adds its part to these and returns its energy: sections.h,
// contact.h, self_contact.h, spring_force.h, weight.h, hold.h and length_scale.h. IncrementSolver sums them.
//
// Units  mm, rad, N per mm of width.

#pragma once

#include <algorithm>
#include <vector>

#include "sim/strip/beam_element.h"
#include "sim/stroke/band_solve.h"
#include "sim/stroke/border.h"

namespace overbend::stroke {

struct Equations {
    std::vector<double> gradient;  // of the energy by every unknown
    BandMatrix matrix;             // second derivatives by the nodes' unknowns
    Border border;                 // and those that a spring's compression has a part in

    void resize(int nodes, int springs) {
        gradient.assign(strip::node_unknowns * nodes + springs, 0.0);
        matrix.resize(strip::node_unknowns * nodes);
        border.resize(springs, strip::node_unknowns * nodes);
    }
    void clear() {
        std::fill(gradient.begin(), gradient.end(), 0.0);
        matrix.clear();
        border.clear();
    }
    // Where spring i's compression stands among the unknowns.
    int of_spring(int i) const { return matrix.size() + i; }
};

}  // namespace overbend::stroke
