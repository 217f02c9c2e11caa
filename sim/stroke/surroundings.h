// What forces on an element's faces do to the nodes around it: vectors and matrices by the unknowns of the
// nodes e - 1 ... e + 2, whose places and turns set the element's and its neighbours' strains.
//
// Units  mm, rad, N per mm of width.

#pragma once

#include <Eigen/Core>
#include <vector>

#include "sim/stroke/equations.h"
#include "sim/stroke/strip_strains.h"

namespace overbend::stroke {

constexpr int around = 4 * strip::node_unknowns;
using AroundVector = Eigen::Matrix<double, around, 1>;
using AroundMatrix = Eigen::Matrix<double, around, around>;

// Where the unknowns of node `node` (0 and 1: the element's own) begin in them.
constexpr int of_node(int node) {
    return strip::node_unknowns * (node + 1);
}

// How what changes by `by` with the strains of the section at an element's node (0 or 1) changes with the
// unknowns around the element.
AroundVector around_node(const StripStrains& strains, const std::vector<double>& length, int element,
                         int node, const material::SectionStrain& by);

// The surroundings' second derivatives into the equations. Nodes beyond the ends have no share. elements: of
// the strip.
void scatter(int element, int elements, const AroundMatrix& K, Equations& to);

// The unknowns within the strip: from ... to of the surroundings', which begin at `shift` in the strip's.
struct AroundRange {
    int from = 0, to = around, shift = 0;
};
AroundRange range_around(int element, int elements);

}  // namespace overbend::stroke
