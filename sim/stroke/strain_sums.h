// What the terms of an increment's energy add up to by the strains that they know: those of the elements and
// of the sections at the nodes (strip_strains.h). Equations take them over once, by the chain rule.
//
// An element has (G, k, g, phi_1, phi_2) of its own, the section at a node (G, k, c_1, c_2), the mean of both
// elements'. Terms couple an element with the sections at its nodes, and those with one another.
//
// Shapes  elements: n, nodes: n + 1.   Units  energy N, by strains without unit or in 1/mm.

#pragma once

#include <Eigen/Core>
#include <vector>

#include "sim/material/section_shape.h"
#include "sim/stroke/band_kernels.h"

namespace overbend::stroke {

constexpr int own_strains = 3 + material::warps;
constexpr int slope_strain = 2;  // g among an element's own
constexpr int warp_strain = 3;   // phi_1

struct ElementSums {
    using Coupling = Eigen::Matrix<double, own_strains, material::section_strains>;
    Eigen::Matrix<double, own_strains, 1> gradient;
    Eigen::Matrix<double, own_strains, own_strains> hessian;
    Coupling with_node[2];              // with the sections at its nodes
    material::SectionHessian of_nodes;  // of the section at its first node with that at its second one
};
struct NodeSums {
    material::SectionStrain gradient;
    material::SectionHessian hessian;
};

struct StrainSums {
    std::vector<ElementSums> elements;
    std::vector<NodeSums> nodes;
    void clear(int count) {
        elements.resize(count), nodes.resize(count + 1);
        // They are made of numbers alone.
        const auto clear_all = [](auto& sums) {
            static_assert(sizeof sums.front() % sizeof(double) == 0);
            band_kernels().clear(sums.front().gradient.data(),
                                 static_cast<long>(sums.size() * sizeof sums.front() / sizeof(double)));
        };
        clear_all(elements), clear_all(nodes);
    }
};

}  // namespace overbend::stroke
