#include "sim/stroke/element_energy.h"

namespace overbend::stroke {

static_assert(own_count == own_strains && node_count == material::section_strains);

ElementState element_state(const material::SectionShape& shape, const StripStrains& strains, double length,
                           int e, Sections& sections) {
    const strip::ElementStrain& s = strains.elements[e];
    ElementState of;
    of.section = shape.held(strains.sections[e]);
    of.g = s.g, of.k = s.k;
    of.length = length;
    of.height = shape.heights(), of.weight = shape.weights();
    for (int j = 0; j < material::warps; ++j) {
        of.warp[j] = s.warp[j];
        of.shape[j] = shape.warp_row(j), of.shape_slope[j] = shape.warp_slope_row(j);
    }
    for (int node = 0; node < 2; ++node) of.node[node] = &strains.nodes[e + node].heights;
    of.padded = shape.padded_layers();
    of.rows = sections.rows_of(e);
    return of;
}

ElementEnergy add_element_gradient(const material::LaneLaw& law, const material::SectionShape& shape,
                                   const StripStrains& strains, double length, int e, Sections& sections,
                                   StrainSums& sums) {
    ElementGradient found;
    found.folded = !(strains.sections[e](0) > 0.0);
    if (!found.folded)
        element_kernels().gradient(law, element_state(shape, strains, length, e, sections), found);
    if (found.folded) return {true, 0.0};
    sections.active[e] = found.active;
    for (int i = 0; i < own_count; ++i) sums.elements[e].gradient(i) += found.by[i];
    for (int i = 0; i < node_count; ++i) {
        sums.nodes[e].gradient(i) += found.by[own_count + i];
        sums.nodes[e + 1].gradient(i) += found.by[own_count + node_count + i];
    }
    return {false, found.energy};
}

void add_element_hessian(const material::SectionShape& shape, const StripStrains& strains, double length,
                         int e, Sections& sections, StrainSums& sums) {
    Eigen::Matrix<double, hessian_rows, hessian_rows> H;
    element_kernels().hessian(element_state(shape, strains, length, e, sections), H.data());
    constexpr int first = own_count, second = first + node_count;
    const auto symmetric = [&](auto& to, int at) {
        for (int column = 0; column < to.cols(); ++column) {
            to(column, column) += H(at + column, at + column);
            for (int row = column + 1; row < to.rows(); ++row) {
                to(row, column) += H(at + row, at + column);
                to(column, row) += H(at + row, at + column);
            }
        }
    };
    ElementSums& own = sums.elements[e];
    symmetric(own.hessian, 0);
    own.with_node[0] += H.block<node_count, own_count>(first, 0).transpose();
    own.with_node[1] += H.block<node_count, own_count>(second, 0).transpose();
    own.of_nodes += H.block<node_count, node_count>(second, first).transpose();
    symmetric(sums.nodes[e].hessian, first);
    symmetric(sums.nodes[e + 1].hessian, second);
}

}  // namespace overbend::stroke
