#include "sim/stroke/element_energy.h"

#include <cmath>
#include <utility>

namespace overbend::stroke {

using material::section_strains;
using material::SectionStrain;
using material::warps;

namespace {

// fibre: l_0^2. square: lambda^2, root and ir its root and that one's inverse; il: 1/l^2; weight: mm.
LayerEnergy layer_energy(const material::LayerResponse& r, double weight, double fibre, double root,
                         double ir, double il, const LayerPlace& at) {
    const double eta = at.slope, ill = il * il, iS = ir * ir;
    const double C = root * at.warp_slope + eta * ir, x = fibre * il;
    // Derivatives of e, C, x = l_0^2/l^2 and g = C x - C_0 by lambda^2 (S), eta (n) and u' (u).
    const double e_S = 0.5 * il, e_n = eta * il;
    const double C_S = 0.5 * (at.warp_slope - eta * iS) * ir, C_n = ir, C_u = root;
    const double x_S = -x * il, x_n = 2.0 * eta * x_S;
    const double g_S = C_S * x + C * x_S, g_n = C_n * x + C * x_n, g_u = C_u * x;
    const double e_SS = -0.5 * ill, e_Sn = -eta * ill, e_nn = il + 2.0 * eta * e_Sn;
    const double C_SS = (0.75 * eta * iS - 0.25 * at.warp_slope) * iS * ir, C_Sn = -0.5 * iS * ir,
                 C_Su = 0.5 * ir;
    const double x_SS = 2.0 * x * ill, x_Sn = 2.0 * eta * x_SS, x_nn = (8.0 * eta * eta * il - 2.0) * x * il;
    const double g_SS = C_SS * x + 2.0 * C_S * x_S + C * x_SS;
    const double g_Sn = C_Sn * x + C_S * x_n + C_n * x_S + C * x_Sn;
    const double g_nn = 2.0 * C_n * x_n + C * x_nn;
    const double g_Su = C_Su * x + C_u * x_S, g_nu = C_u * x_n;
    const double s = weight * r.stress, tau = weight * r.shear_stress;
    const double ee = weight * r.tangent, eg = weight * r.cross_tangent, gg = weight * r.shear_tangent;
    const double by_e_S = ee * e_S + eg * g_S, by_e_n = ee * e_n + eg * g_n;
    const double by_g_S = eg * e_S + gg * g_S, by_g_n = eg * e_n + gg * g_n;
    LayerEnergy w;
    w.S = s * e_S + tau * g_S;
    w.eta = s * e_n + tau * g_n;
    w.slope = tau * g_u;
    w.SS = by_e_S * e_S + by_g_S * g_S + s * e_SS + tau * g_SS;
    w.S_eta = by_e_S * e_n + by_g_S * g_n + s * e_Sn + tau * g_Sn;
    w.eta_eta = by_e_n * e_n + by_g_n * g_n + s * e_nn + tau * g_nn;
    w.S_slope = by_g_S * g_u + tau * g_Su;
    w.eta_slope = by_g_n * g_u + tau * g_nu;
    w.slope_slope = gg * g_u * g_u;
    return w;
}

// The strains of an element's energy: its section's, with the mean c of its nodes; its other ones; those of
// the sections at its nodes as far as they set heights; and one that is always 0, so that processors take
// them in pairs.
constexpr int others = section_strains, first_node = others + own_strains - 2;
constexpr int second_node = first_node + section_strains, rows = second_node + section_strains + 1;
using Row = Eigen::Matrix<double, rows, 1>;
using Hessian = Eigen::Matrix<double, rows, rows>;

// How lambda^2, eta and u' of a layer change with the strains, and how the energy's derivatives by them do.
struct LayerRows {
    Eigen::Matrix<double, section_strains, 1> square;
    Row eta = Row::Zero();
    Eigen::Matrix<double, warps, 1> slope;
    Row by_square, by_eta, by_slope;
};

// Hessians from their diagonal on down; the numbers of rows are fixed, so that the loops are unrolled.
template <int column>
void add_column(const LayerRows& l, Hessian& H) {
    constexpr int from = column & ~1, count = rows - from, warp = column - (others + 1);  // in pairs
    auto to = H.col(column).template tail<count>();
    if constexpr (column == 1)
        to += l.square(column) * l.by_square.template tail<count>() +
              l.eta(column) * l.by_eta.template tail<count>();
    else if constexpr (column < section_strains)
        to += l.square(column) * l.by_square.template tail<count>();
    else if constexpr (warp >= 0 && warp < warps)
        to += l.slope(warp) * l.by_slope.template tail<count>() +
              l.eta(column) * l.by_eta.template tail<count>();
    else
        to += l.eta(column) * l.by_eta.template tail<count>();
}
template <int... column>
void add_columns(const LayerRows& l, Hessian& H, std::integer_sequence<int, column...>) {
    (add_column<column>(l, H), ...);
}

}  // namespace

double add_element_gradient(const material::LayerLaw& law, const material::SectionShape& shape,
                            const StripStrains& strains, double length, int e, Sections& sections,
                            StrainSums& sums) {
    double energy = 0.0, active = 0.0;
    SectionStrain section = SectionStrain::Zero(), first = section, second = section;
    double slope = 0.0, turned = 0.0, warp[warps] = {};
    const int n = shape.layers();
    const material::LayerHeights &left = strains.nodes[e].heights, &right = strains.nodes[e + 1].heights;
    const double k = strains.elements[e].k;
    for (int i = 0; i < n; ++i) {
        const std::size_t layer = static_cast<std::size_t>(e) * n + i;
        const double square = sections.squares[layer].value;
        const LayerPlace at = layer_place(shape, strains, length, e, i);
        const double fibre = square + at.slope * at.slope, il = 1.0 / fibre;
        const double root = std::sqrt(square), ir = 1.0 / root, was_fibre = sections.fibre[layer];
        const double shear = (root * at.warp_slope + at.slope * ir) * was_fibre * il - sections.skew[layer];
        const material::LayerStart& was = sections.starts[layer];
        const material::LayerResponse r =
            material::respond(law, was, 0.5 * std::log(fibre), shear, sections.flow[layer]);
        sections.flow[layer] = r.flow;
        const double weight = shape.weight(i);
        energy += weight * r.energy;
        if (r.flow > 0.0 || was.accumulated > 0.0)
            active += std::abs(weight * r.stress * shape.height(i) * ir * ir);
        const LayerEnergy w = sections.layers[layer] =
            layer_energy(r, length * weight, was_fibre, root, ir, il, at);
        section += w.S * sections.squares[layer].by;
        first += w.eta * left.by(i), second += w.eta * right.by(i);
        slope += w.eta, turned += w.eta * at.warp;
        for (int j = 0; j < warps; ++j)
            warp[j] += w.eta * k * shape.warp(j, i) + w.slope * shape.warp_slope(j, i);
    }
    sections.active[e] = active;
    ElementSums& own = sums.elements[e];
    own.gradient(0) += section(0), own.gradient(1) += section(1) + turned;
    own.gradient(slope_strain) += slope;
    for (int j = 0; j < warps; ++j) own.gradient(warp_strain + j) += warp[j];
    SectionStrain& at_first = sums.nodes[e].gradient;
    SectionStrain& at_second = sums.nodes[e + 1].gradient;
    at_first -= first / length, at_second += second / length;
    at_first.tail<warps>() += 0.5 * section.tail<warps>();
    at_second.tail<warps>() += 0.5 * section.tail<warps>();
    return energy;
}

void add_element_hessian(const material::SectionShape& shape, const StripStrains& strains, double length,
                         int e, const Sections& sections, StrainSums& sums) {
    Hessian H = Hessian::Zero();
    double G_G = 0.0, G_k = 0.0, k_k = 0.0;  // what lambda^2 and eta curve themselves
    double G_c[warps] = {}, k_c[warps] = {}, k_warp[warps] = {};
    const int n = shape.layers();
    const material::LayerHeights &left = strains.nodes[e].heights, &right = strains.nodes[e + 1].heights;
    const double over = 1.0 / length;
    const strip::ElementStrain& s = strains.elements[e];
    LayerRows l;
    l.eta(others) = 1.0;
    material::SquareCurvature curve[material::most_layers];
    shape.curvatures(strains.sections[e], curve);
    for (int i = 0; i < n; ++i) {
        const std::size_t layer = static_cast<std::size_t>(e) * n + i;
        const material::LayerSquare& q = sections.squares[layer];
        const LayerEnergy& w = sections.layers[layer];
        l.square = q.by;
        l.eta(1) = s.warp[0] * shape.warp(0, i) + s.warp[1] * shape.warp(1, i);
        for (int j = 0; j < warps; ++j) {
            l.eta(others + 1 + j) = s.k * shape.warp(j, i);
            l.slope(j) = shape.warp_slope(j, i);
            G_c[j] += w.S * q.Gc[j], k_c[j] += w.S * q.kc[j];
            k_warp[j] += w.eta * shape.warp(j, i);
        }
        l.eta.segment<section_strains>(first_node) = -over * left.by(i);
        l.eta.segment<section_strains>(second_node) = over * right.by(i);
        G_G += w.S * curve[i].GG, G_k += w.S * curve[i].Gk, k_k += w.S * curve[i].kk;
        l.by_square = w.S_eta * l.eta;
        l.by_square.head<section_strains>() += w.SS * l.square;
        l.by_square.segment<warps>(others + 1) += w.S_slope * l.slope;
        l.by_eta = w.eta_eta * l.eta;
        l.by_eta.head<section_strains>() += w.S_eta * l.square;
        l.by_eta.segment<warps>(others + 1) += w.eta_slope * l.slope;
        l.by_slope = w.eta_slope * l.eta;  // of u' and what stands behind it
        l.by_slope.segment<warps>(others + 1) += w.slope_slope * l.slope;
        add_columns(l, H, std::make_integer_sequence<int, rows - 1>());
    }
    H(0, 0) += G_G, H(1, 0) += G_k, H(1, 1) += k_k;
    for (int j = 0; j < warps; ++j)
        H(2 + j, 0) += G_c[j], H(2 + j, 1) += k_c[j], H(others + 1 + j, 1) += k_warp[j];
    for (int column = 1; column < rows; ++column)
        for (int row = 0; row < column; ++row) H(row, column) = H(column, row);
    // c is the mean of the nodes'.
    for (const int node : {first_node, second_node}) {
        H.middleCols<warps>(node + 2) += 0.5 * H.middleCols<warps>(2);
        H.middleRows<warps>(node + 2) += 0.5 * H.middleRows<warps>(2);
    }

    constexpr int rest = own_strains - 2;
    ElementSums& own = sums.elements[e];
    own.hessian.topLeftCorner<2, 2>() += H.topLeftCorner<2, 2>();
    own.hessian.bottomLeftCorner<rest, 2>() += H.block<rest, 2>(others, 0);
    own.hessian.topRightCorner<2, rest>() += H.block<2, rest>(0, others);
    own.hessian.bottomRightCorner<rest, rest>() += H.block<rest, rest>(others, others);
    for (int node = 0; node < 2; ++node) {
        const int at = node == 0 ? first_node : second_node;
        own.with_node[node].topRows<2>() += H.block<2, section_strains>(0, at);
        own.with_node[node].bottomRows<rest>() += H.block<rest, section_strains>(others, at);
        sums.nodes[e + node].hessian += H.block<section_strains, section_strains>(at, at);
    }
    own.of_nodes += H.block<section_strains, section_strains>(first_node, second_node);
}

}  // namespace overbend::stroke
