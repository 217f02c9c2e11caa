#include "sim/stroke/sections.h"

#include <algorithm>
#include <cmath>

#include "sim/stroke/element_energy.h"

namespace overbend::stroke {

using material::warps;

namespace {

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

double layer_slope(const material::SectionShape& shape, const StripStrains& strains, double length, int e,
                   int i) {
    const strip::ElementStrain& s = strains.elements[e];
    double warp = 0.0;
    for (int j = 0; j < warps; ++j) warp += s.warp[j] * shape.warp(j, i);
    return s.g + s.k * warp + (strains.nodes[e + 1].heights.y(i) - strains.nodes[e].heights.y(i)) / length;
}

void start_sections(const material::LayerLaw& law, const material::SectionShape& shape,
                    const strip::StripState& strip, const std::vector<double>& length,
                    const StripStrains& strains, const std::vector<double>& expected_flow,
                    Sections& sections) {
    const int elements = strip.elements(), n = shape.layers();
    const material::LaneLaw of_lanes = material::lane_law(law);
    sections.padded = shape.padded_layers();
    sections.rows.resize(static_cast<std::size_t>(elements) * element_rows * sections.padded);
    sections.along.resize(elements);
    sections.active.resize(elements);
    for (int e = 0; e < elements; ++e) {
        double* rows = sections.rows_of(e);
        for (int i = 0; i < sections.padded; ++i) {
            const std::size_t at = static_cast<std::size_t>(e) * n + std::min(i, n - 1);
            material::store_start(law, material::start_of(law, strip.history[at]), rows + i, sections.padded);
            sections.at(e, material::flow, i) = expected_flow.empty() ? 0.0 : expected_flow[at];
            sections.at(e, material::flow_hoop, i) = sections.at(e, material::flow_shear, i) = 0.0;
        }
        double along[3];
        element_kernels().start(of_lanes, element_state(shape, strains, length[e], e, sections), along);
        sections.along[e] << along[0], along[1], along[1], along[2];
    }
}

double advance_layers(const material::LayerLaw& law, const material::SectionShape& shape, int e,
                      Sections& sections, material::LayerHistory* history, double* stress,
                      double* width_stress, double* flow) {
    double work = 0.0;
    for (int i = 0; i < shape.layers(); ++i) {
        material::LayerResponse r;
        r.stress = sections.at(e, material::hoop_stress, i);
        r.width_stress = sections.at(e, material::width_stress, i);
        r.shear_stress = sections.at(e, material::shear_stress, i);
        r.flow = flow[i] = sections.at(e, material::flow, i);
        if (r.flow > 0.0) {
            r.flow_a = sections.at(e, material::flow_a, i), r.flow_b = sections.at(e, material::flow_b, i);
            r.flow_c = sections.at(e, material::flow_c, i);
            const material::LayerHistory was = history[i];
            history[i] = material::advance(law, was, r);
            work +=
                shape.weight(i) * material::plastic_work(law, was, stress[i], width_stress[i], r, history[i]);
        } else {
            history[i].shear_stress = r.shear_stress;
        }
        stress[i] = r.stress, width_stress[i] = r.width_stress;
    }
    return work;
}

std::optional<SectionsSum> add_sections(const material::LayerLaw& law, const material::SectionShape& shape,
                                        const std::vector<double>& length, const StripStrains& strains,
                                        const std::vector<double>& before, const std::vector<double>& u,
                                        Sections& sections, Equations& to) {
    if (strains.folded) return std::nullopt;
    const int elements = static_cast<int>(length.size());
    const material::LaneLaw of_lanes = material::lane_law(law);
    SectionsSum sum;
    for (int e = 0; e < elements; ++e) {
        const ElementEnergy found =
            add_element_gradient(of_lanes, shape, strains, length[e], e, sections, to.by_strains);
        if (found.folded) return std::nullopt;
        sum.energy += length[e] * found.energy;
        sum.along += add_along(sections.along[e], length[e], e, before, u, to);
    }
    return sum;
}

void add_section_hessians(const material::SectionShape& shape, const std::vector<double>& length,
                          const StripStrains& strains, Sections& sections, Equations& to) {
    const int elements = static_cast<int>(length.size());
    for (int e = 0; e < elements; ++e)
        add_element_hessian(shape, strains, length[e], e, sections, to.by_strains);
    // What the heights at the nodes curve under what the layers of the elements on both sides press on them
    // with.
    double share[material::most_layers];
    const double none[material::most_layers] = {};
    for (int node = 0; node <= elements; ++node) {
        const NodeSection& section = strains.nodes[node];
        const double* before = node > 0 ? sections.rows_of(node - 1) + by_eta * sections.padded : none;
        const double* behind = node < elements ? sections.rows_of(node) + by_eta * sections.padded : none;
        const double over_before = node > 0 ? 1.0 / length[node - 1] : 0.0;
        const double over_behind = node < elements ? 1.0 / length[node] : 0.0;
        for (int i = 0; i < sections.padded; ++i)
            share[i] = over_before * before[i] - over_behind * behind[i];
        to.by_strains.nodes[node].hessian += shape.height_curvature(section.strain, section.squares, share);
    }
}

}  // namespace overbend::stroke
