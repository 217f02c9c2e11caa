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
    if (!found.folded) element_kernels().gradient(law, element_state(shape, strains, length, e, sections), found);
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
    for (int column = 1; column < element_strains; ++column)
        for (int row = 0; row < column; ++row) H(row, column) = H(column, row);
    constexpr int first = own_count, second = first + node_count;
    ElementSums& own = sums.elements[e];
    own.hessian += H.topLeftCorner<own_count, own_count>();
    own.with_node[0] += H.block<own_count, node_count>(0, first);
    own.with_node[1] += H.block<own_count, node_count>(0, second);
    own.of_nodes += H.block<node_count, node_count>(first, second);
    sums.nodes[e].hessian += H.block<node_count, node_count>(first, first);
    sums.nodes[e + 1].hessian += H.block<node_count, node_count>(second, second);
}

}  // namespace overbend::stroke
