#include "sim/stroke/sections.h"

#include <algorithm>
#include <cmath>

#include "sim/stroke/element_energy.h"

namespace overbend::stroke {

using material::warps;

namespace {

std::size_t first_layer(const material::SectionShape& shape, int element) {
    return static_cast<std::size_t>(element) * shape.layers();
}

// The warp's change along the element, by its nodes' unknowns; returns its energy.
double add_along(const Eigen::Matrix2d& stiffness, double length, int element,
                 const std::vector<double>& before, const std::vector<double>& u, Equations& to) {
    const int first = strip::node_unknowns * element + strip::warp_unknown;
    const int next = first + strip::node_unknowns;
    Eigen::Vector2d change;
    for (int j = 0; j < warps; ++j)
        change(j) = (u[next + j] - before[next + j]) - (u[first + j] - before[first + j]);
    const Eigen::Vector2d force = length * stiffness * change;
    for (int j = 0; j < warps; ++j) {
        to.gradient[first + j] -= force(j), to.gradient[next + j] += force(j);
        for (int l = 0; l < warps; ++l) {
            const double stiff = length * stiffness(j, l);
            to.matrix.at(first + j, first + l) += stiff, to.matrix.at(next + j, next + l) += stiff;
            to.matrix.at(first + j, next + l) -= stiff, to.matrix.at(next + j, first + l) -= stiff;
        }
    }
    return 0.5 * force.dot(change);
}

}  // namespace

LayerPlace layer_place(const material::SectionShape& shape, const StripStrains& strains, double length, int e,
                       int i) {
    const strip::ElementStrain& s = strains.elements[e];
    LayerPlace p;
    for (int j = 0; j < warps; ++j) {
        p.warp += s.warp[j] * shape.warp(j, i);
        p.warp_slope += s.warp[j] * shape.warp_slope(j, i);
    }
    p.slope =
        s.g + s.k * p.warp + (strains.nodes[e + 1].heights.y(i) - strains.nodes[e].heights.y(i)) / length;
    return p;
}

void start_sections(const material::LayerLaw& law, const material::SectionShape& shape,
                    const strip::StripState& strip, const std::vector<double>& length,
                    const StripStrains& strains, const std::vector<double>& expected_flow,
                    Sections& sections) {
    const int elements = strip.elements(), n = shape.layers();
    sections.starts.resize(strip.history.size());
    for (std::size_t i = 0; i < strip.history.size(); ++i)
        sections.starts[i] = material::start_of(law, strip.history[i]);
    sections.flow.assign(strip.history.size(), 0.0);
    sections.fibre.resize(strip.history.size());
    sections.skew.resize(strip.history.size());
    sections.along.assign(elements, Eigen::Matrix2d::Zero());
    sections.active.resize(elements);
    sections.squares.resize(strip.history.size());
    sections.layers.resize(strip.history.size());
    for (int e = 0; e < elements; ++e) {
        shape.squares(strains.sections[e], &sections.squares[first_layer(shape, e)]);
        for (int i = 0; i < n; ++i) {
            const std::size_t at = first_layer(shape, e) + i;
            const double square = sections.squares[at].value, root = std::sqrt(square);
            const LayerPlace p = layer_place(shape, strains, length[e], e, i);
            sections.fibre[at] = square + p.slope * p.slope;
            sections.skew[at] = root * p.warp_slope + p.slope / root;
            const double flow = expected_flow.empty() ? 0.0 : expected_flow[at];
            const double modulus = sections.starts[at].left * law.shear_modulus;
            const double shown = modulus / (1.0 + 3.0 * modulus * flow / sections.starts[at].yield);
            for (int j = 0; j < warps; ++j)
                for (int l = 0; l < warps; ++l)
                    sections.along[e](j, l) += shape.weight(i) * shown * square * shape.warp_slope(j, i) *
                                               shape.warp_slope(l, i) / 12.0;
        }
    }
}

material::LayerStrains layer_strains(const material::SectionShape& shape, const StripStrains& strains,
                                     const std::vector<double>& length, const Sections& sections, int e) {
    material::LayerSquare squares[material::most_layers];
    shape.squares(strains.sections[e], squares);
    material::LayerStrains to;
    for (int i = 0; i < shape.layers(); ++i) {
        const std::size_t at = first_layer(shape, e) + i;
        const LayerPlace p = layer_place(shape, strains, length[e], e, i);
        const double square = squares[i].value, root = std::sqrt(square), fibre = square + p.slope * p.slope;
        to.hoop[i] = 0.5 * std::log(fibre);
        to.shear[i] = (root * p.warp_slope + p.slope / root) * sections.fibre[at] / fibre - sections.skew[at];
    }
    return to;
}

std::optional<SectionsSum> add_sections(const material::LayerLaw& law, const material::SectionShape& shape,
                                        const std::vector<double>& length, const StripStrains& strains,
                                        const std::vector<double>& before, const std::vector<double>& u,
                                        Sections& sections, Equations& to) {
    if (strains.folded) return std::nullopt;
    const int elements = static_cast<int>(length.size());
    SectionsSum sum;
    for (int e = 0; e < elements; ++e) {
        if (!shape.squares(strains.sections[e], &sections.squares[first_layer(shape, e)]))
            return std::nullopt;
        sum.energy +=
            length[e] * add_element_gradient(law, shape, strains, length[e], e, sections, to.by_strains);
        sum.along += add_along(sections.along[e], length[e], e, before, u, to);
    }
    return sum;
}

void add_section_hessians(const material::SectionShape& shape, const std::vector<double>& length,
                          const StripStrains& strains, const Sections& sections, Equations& to) {
    const int elements = static_cast<int>(length.size()), n = shape.layers();
    for (int e = 0; e < elements; ++e)
        add_element_hessian(shape, strains, length[e], e, sections, to.by_strains);
    // What the heights at the nodes curve under what the layers of the elements on both sides press on them
    // with.
    double share[material::most_layers];
    for (int node = 0; node <= elements; ++node) {
        const NodeSection& section = strains.nodes[node];
        for (int i = 0; i < n; ++i) {
            share[i] = 0.0;
            if (node > 0)
                share[i] += sections.layers[first_layer(shape, node - 1) + i].eta / length[node - 1];
            if (node < elements) share[i] -= sections.layers[first_layer(shape, node) + i].eta / length[node];
        }
        to.by_strains.nodes[node].hessian += shape.height_curvature(section.strain, section.squares, share);
    }
}

}  // namespace overbend::stroke
