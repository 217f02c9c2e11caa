// What a force on an element does to the nodes around it: vectors and matrices by the unknowns of the nodes
// e - 1 ... e + 2, whose places and turns set the element's and its neighbours' strains.
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
using NodeStrainGradient = Eigen::Matrix<double, 2 + material::warps, around>;

// Where the unknowns of node `node` (0 and 1: the element's own) begin in them.
constexpr int of_node(int node) {
    return strip::node_unknowns * (node + 1);
}

// Adds `share` times the gradient of an element's (G, k, c_1, c_2) to `gradient`; of: the element itself,
// about: the one that the surroundings belong to.
void add_strain_gradient(const strip::ElementStrain& of, double length, int of_minus_about, double share,
                         NodeStrainGradient& gradient);

// Adds N d2G + Q d2g of an element to K.
void add_strain_curvature(const strip::ElementStrain& of, double length, int of_minus_about, double N,
                          double Q, AroundMatrix& K);

// The surroundings' gradient and the transpose of their hessian into the equations, which is the hessian itself but
// for friction. Nodes beyond the ends have no share. elements: of the strip.
void scatter(int element, int elements, const AroundVector& gradient, const AroundMatrix& K, Equations& to);

// The unknowns within the strip: from ... to of the surroundings', which begin at `shift` in the strip's.
struct AroundRange {
    int from = 0, to = around, shift = 0;
};
AroundRange range_around(int element, int elements);

}  // namespace overbend::stroke
