#include "sim/stroke/sections.h"

#include <algorithm>
#include <cmath>

#include "sim/stroke/element_energy.h"
#include "sim/stroke/surroundings.h"

namespace overbend::stroke {

using material::section_strains;
using material::warps;

namespace {

std::size_t first_layer(const material::SectionShape& shape, int element) {
    return static_cast<std::size_t>(element) * shape.layers();
}

// How one of the strains of an element's energy changes with one of the unknowns around it.
struct Link {
    int strain = 0, unknown = 0;
    double by = 0.0;
};
struct Links {
    Link link[52];
    int count = 0;
    void add(int strain, int unknown, double by) { link[count++] = {strain, unknown, by}; }
};

// Of element `of` (-1: the one before it, 0: itself, 1: the one behind), whose G and k stand at `strain` and c at
// `gradient`.
void link_element(const StripStrains& strains, const std::vector<double>& length, int e, int of, int strain,
                  int gradient, Links& links) {
    const int element = e + of;
    if (element < 0 || element >= static_cast<int>(length.size())) return;
    const strip::StrainGradient d = strip::strain_gradient(strains.elements[element], length[element]);
    for (int node = 0; node < 2; ++node) {
        const int at = of_node(of + node);
        for (int i = 0; i < 3; ++i) links.add(strain, at + i, d.G[3 * node + i]);
        links.add(strain + 1, at + 2, d.k[3 * node + 2]);
        for (int j = 0; j < warps; ++j)
            links.add(gradient + j, at + strip::warp_unknown + j, (node == 0 ? -1.0 : 1.0) / length[element]);
    }
}

Links links_of(const StripStrains& strains, const std::vector<double>& length, int e) {
    Links links;
    link_element(strains, length, e, -1, beside_strain, gradient_strain, links);
    link_element(strains, length, e, 0, own_strain, gradient_strain + warps, links);
    link_element(strains, length, e, 1, beside_strain + 2, gradient_strain + 2 * warps, links);
    const strip::StrainGradient d = strip::strain_gradient(strains.elements[e], length[e]);
    for (int node = 0; node < 2; ++node) {
        for (int i = 0; i < 3; ++i) links.add(slope_strain, of_node(node) + i, d.g[3 * node + i]);
        for (int j = 0; j < warps; ++j)
            links.add(warp_strain + j, of_node(node) + strip::warp_unknown + j, 0.5);
    }
    return links;
}

// J^T H J and J^T gradient, with J the links.
void around_element(const ElementEnergy& energy, const Links& links, double length, AroundVector& gradient,
                    AroundMatrix& K) {
    Eigen::Matrix<double, strain_rows, around> HJ = Eigen::Matrix<double, strain_rows, around>::Zero();
    for (int i = 0; i < links.count; ++i)
        HJ.col(links.link[i].unknown) += links.link[i].by * energy.hessian.col(links.link[i].strain);
    const Eigen::Matrix<double, around, strain_rows> turned = HJ.transpose();
    gradient.setZero(), K.setZero();
    for (int i = 0; i < links.count; ++i) {
        const Link& l = links.link[i];
        const double by = length * l.by;
        gradient(l.unknown) += by * energy.gradient(l.strain);
        K.col(l.unknown) += by * turned.col(l.strain);
    }
}

// The warp's change along the element; returns its energy.
double add_along(const Eigen::Matrix2d& stiffness, double length, const double* before, const double* u,
                 AroundVector& gradient, AroundMatrix& K) {
    constexpr int first = strip::warp_unknown, next = strip::node_unknowns + first;
    const auto change = [&](int j) {
        return (u[next + j] - before[next + j]) - (u[first + j] - before[first + j]);
    };
    const Eigen::Vector2d force = length * stiffness * Eigen::Vector2d(change(0), change(1));
    for (int j = 0; j < warps; ++j) {
        const int a = of_node(0) + first + j, b = of_node(1) + first + j;
        gradient(a) -= force(j), gradient(b) += force(j);
        for (int l = 0; l < warps; ++l) {
            const int c = of_node(0) + first + l, d = of_node(1) + first + l;
            const double stiff = length * stiffness(j, l);
            K(a, c) += stiff, K(b, d) += stiff, K(a, d) -= stiff, K(b, c) -= stiff;
        }
    }
    return 0.5 * force.dot(Eigen::Vector2d(change(0), change(1)));
}

// What the heights at the nodes curve under what the layers of the elements on both sides press on them with.
void add_height_curvatures(const material::SectionShape& shape, const std::vector<double>& length,
                           const StripStrains& strains, const std::vector<double>& node_share,
                           Equations& to) {
    const int elements = static_cast<int>(length.size()), n = shape.layers();
    const AroundVector none = AroundVector::Zero();
    for (int node = 0; node <= elements; ++node) {
        const NodeSection& section = strains.nodes[node];
        const double* share = &node_share[static_cast<std::size_t>(node) * n];
        if (std::all_of(share, share + n, [](double s) { return s == 0.0; })) continue;
        const int about = std::min(node, elements - 1);
        NodeStrainGradient d = NodeStrainGradient::Zero();
        AroundMatrix K;
        for (const int e : {section.left, section.right})
            add_strain_gradient(strains.elements[e], length[e], e - about, 0.5, d);
        const NodeStrainGradient Hd = shape.height_curvature(section.strain, section.squares, share) * d;
        K.noalias() = d.transpose().lazyProduct(Hd);
        scatter(about, elements, none, K, to);
    }
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
    material::LayerSquares squares;
    for (int e = 0; e < elements; ++e) {
        shape.squares(strains.sections[e], squares);
        for (int i = 0; i < n; ++i) {
            const std::size_t at = first_layer(shape, e) + i;
            const double square = squares.layer[i].value, root = std::sqrt(square);
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
    material::LayerSquares squares;
    shape.squares(strains.sections[e], squares);
    material::LayerStrains to;
    for (int i = 0; i < shape.layers(); ++i) {
        const std::size_t at = first_layer(shape, e) + i;
        const LayerPlace p = layer_place(shape, strains, length[e], e, i);
        const double square = squares.layer[i].value, root = std::sqrt(square),
                     fibre = square + p.slope * p.slope;
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
    const int elements = static_cast<int>(length.size()), n = shape.layers();
    sections.node_share.assign(static_cast<std::size_t>(elements + 1) * n, 0.0);
    SectionsSum sum;
    material::LayerSquares squares;
    AroundVector gradient;
    AroundMatrix K;
    for (int e = 0; e < elements; ++e) {
        shape.squares(strains.sections[e], squares);
        if (squares.folded) return std::nullopt;
        double* const share[2] = {&sections.node_share[first_layer(shape, e)],
                                  &sections.node_share[first_layer(shape, e + 1)]};
        const ElementEnergy energy =
            element_energy(law, shape, strains, length[e], squares, e, sections, share);
        sum.energy += length[e] * energy.energy;
        sections.active[e] = energy.active;
        around_element(energy, links_of(strains, length, e), length[e], gradient, K);
        // The forces on G and g times their second derivatives.
        add_strain_curvature(strains.elements[e], length[e], 0, length[e] * energy.gradient(own_strain),
                             length[e] * energy.gradient(slope_strain), K);
        if (e > 0)
            add_strain_curvature(strains.elements[e - 1], length[e - 1], -1,
                                 length[e] * energy.gradient(beside_strain), 0.0, K);
        if (e + 1 < elements)
            add_strain_curvature(strains.elements[e + 1], length[e + 1], 1,
                                 length[e] * energy.gradient(beside_strain + 2), 0.0, K);
        const int at = strip::node_unknowns * e;
        sum.along += add_along(sections.along[e], length[e], &before[at], &u[at], gradient, K);
        scatter(e, elements, gradient, K, to);
    }
    add_height_curvatures(shape, length, strains, sections.node_share, to);
    return sum;
}

}  // namespace overbend::stroke
