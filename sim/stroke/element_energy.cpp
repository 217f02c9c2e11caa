#include "sim/stroke/element_energy.h"

#include <cmath>

namespace overbend::stroke {

using material::section_strains;
using material::warps;

namespace {

// Energy of a layer with its first and second derivatives by lambda^2, eta and u'.
struct LayerEnergy {
    double first[3], second[3][3];
};

// was: the layer's start; fibre and skew: l_0^2 and C_0. square: lambda^2; weight: mm.
LayerEnergy layer_energy(const material::LayerResponse& r, double weight, double square, double fibre,
                         const LayerPlace& at) {
    const double S = square, eta = at.slope, l = S + eta * eta, il = 1.0 / l, ill = il * il;
    const double root = std::sqrt(S), ir = 1.0 / root, iS = ir * ir;
    const double C = root * at.warp_slope + eta * ir, x = fibre * il;
    // Derivatives of e, C and x = l_0^2/l^2.
    const double e1[3] = {0.5 * il, eta * il, 0.0};
    const double C1[3] = {0.5 * (at.warp_slope - eta * iS) * ir, ir, root};
    const double x1[3] = {-x * il, -2.0 * eta * x * il, 0.0};
    const double e2[3][3] = {{-0.5 * ill, -eta * ill, 0.0}, {0.0, il - 2.0 * eta * eta * ill, 0.0}, {}};
    const double C2[3][3] = {
        {(0.75 * eta * iS - 0.25 * at.warp_slope) * iS * ir, -0.5 * iS * ir, 0.5 * ir}, {}, {}};
    const double x2[3][3] = {
        {2.0 * x * ill, 4.0 * eta * x * ill, 0.0}, {0.0, (8.0 * eta * eta * il - 2.0) * x * il, 0.0}, {}};
    const double s = weight * r.stress, tau = weight * r.shear_stress;
    const double ee = weight * r.tangent, eg = weight * r.cross_tangent, gg = weight * r.shear_tangent;
    LayerEnergy w;
    double g1[3];
    for (int a = 0; a < 3; ++a) {
        g1[a] = C1[a] * x + C * x1[a];
        w.first[a] = s * e1[a] + tau * g1[a];
    }
    for (int a = 0; a < 3; ++a)
        for (int b = a; b < 3; ++b) {
            const double g2 = C2[a][b] * x + C1[a] * x1[b] + C1[b] * x1[a] + C * x2[a][b];
            w.second[a][b] = w.second[b][a] = ee * e1[a] * e1[b] + eg * (e1[a] * g1[b] + g1[a] * e1[b]) +
                                              gg * g1[a] * g1[b] + s * e2[a][b] + tau * g2;
        }
    return w;
}

}  // namespace

ElementEnergy element_energy(const material::LayerLaw& law, const material::SectionShape& shape,
                             const StripStrains& strains, double length,
                             const material::LayerSquares& squares, int e, Sections& sections,
                             double* const node_share[2]) {
    using Row = Eigen::Matrix<double, strain_rows, 1>;
    using SquareRow = Eigen::Matrix<double, slope_strain, 1>;
    constexpr int beyond = strain_rows - slope_strain;  // strains that lambda^2 does not know
    using WarpRow = Eigen::Matrix<double, warps, 1>;
    ElementEnergy sum;
    sum.gradient.setZero(), sum.hessian.setZero();
    const int n = shape.layers();
    const NodeSection &left = strains.nodes[e], &right = strains.nodes[e + 1];
    const double k = strains.elements[e].k, over = 1.0 / length;
    // The shares of the elements beside in the nodes' sections; an end has the element's own strains alone.
    const double before = left.left < e ? 0.5 : 0.0, behind = right.right > e ? 0.5 : 0.0;
    Row slope = Row::Zero();  // how eta changes
    slope(slope_strain) = 1.0;
    SquareRow square;  // and lambda^2
    for (int i = 0; i < n; ++i) {
        const std::size_t layer = static_cast<std::size_t>(e) * n + i;
        const material::LayerSquare& q = squares.layer[i];
        const LayerPlace at = layer_place(shape, strains, length, e, i);
        const double l = q.value + at.slope * at.slope, root = std::sqrt(q.value);
        const double hoop = 0.5 * std::log(l);
        const double shear =
            (root * at.warp_slope + at.slope / root) * sections.fibre[layer] / l - sections.skew[layer];
        const material::LayerStart& was = sections.starts[layer];
        const material::LayerResponse r = material::respond(law, was, hoop, shear, sections.flow[layer]);
        sections.flow[layer] = r.flow;
        const double weight = shape.weight(i);
        sum.energy += weight * r.energy;
        if (r.flow > 0.0 || was.accumulated > 0.0)
            sum.active += std::abs(weight * r.stress * shape.height(i) / q.value);

        const LayerEnergy w = layer_energy(r, weight, q.value, sections.fibre[layer], at);
        const double *a = left.heights.place[i].data() + 1, *b = right.heights.place[i].data() + 1;
        for (int j = 0; j < 2; ++j) {
            slope(own_strain + j) = over * ((1.0 - behind) * b[j] - (1.0 - before) * a[j]);
            slope(beside_strain + j) = -over * before * a[j];
            slope(beside_strain + 2 + j) = over * behind * b[j];
            square(j) = q.by(j);
        }
        slope(own_strain + 1) += at.warp;
        for (int j = 0; j < warps; ++j) {
            slope(warp_strain + j) = k * shape.warp(j, i);
            const double c[3] = {before, 2.0 - before - behind,
                                 behind};  // twice the shares in the mean of the nodes
            const double of_height[3] = {
                -before * a[2 + j], (1.0 - behind) * b[2 + j] - (1.0 - before) * a[2 + j], behind * b[2 + j]};
            for (int beside = 0; beside < 3; ++beside) {
                slope(gradient_strain + warps * beside + j) = over * of_height[beside];
                square(gradient_strain + warps * beside + j) = 0.5 * c[beside] * q.by(2 + j);
            }
        }
        const WarpRow warp(shape.warp_slope(0, i), shape.warp_slope(1, i));

        // Of lambda^2, eta and u', how their derivatives of the energy change with all strains.
        Row by[3];
        for (int m = 0; m < 3; ++m) {
            by[m] = w.second[m][1] * slope;
            by[m].head<slope_strain>() += w.second[m][0] * square;
            for (int j = 0; j < warps; ++j) by[m](warp_strain + j) += w.second[m][2] * warp(j);
        }
        for (int column = 0; column < slope_strain; ++column) {
            auto H = sum.hessian.col(column);
            H += by[1](column) * slope;
            H.head<slope_strain>() += by[0](column) * square;
        }
        for (int column = slope_strain; column < strain_rows; ++column)
            sum.hessian.col(column).tail<beyond>() += by[1](column) * slope.tail<beyond>();
        for (int column = 0; column < strain_rows; ++column)
            for (int j = 0; j < warps; ++j) sum.hessian(warp_strain + j, column) += by[2](column) * warp(j);
        sum.gradient += w.first[1] * slope;
        sum.gradient.head<slope_strain>() += w.first[0] * square;
        for (int j = 0; j < warps; ++j) sum.gradient(warp_strain + j) += w.first[2] * warp(j);

        // What lambda^2 and eta curve themselves.
        const double s = w.first[0];
        const auto add = [&](int a_, int b_, double value) {
            sum.hessian(a_, b_) += value;
            if (a_ != b_) sum.hessian(b_, a_) += value;
        };
        add(0, 0, s * q.GG), add(0, 1, s * q.Gk), add(1, 1, s * q.kk);
        for (int j = 0; j < warps; ++j) {
            const double c[3] = {0.5 * before, 1.0 - 0.5 * (before + behind), 0.5 * behind};
            for (int beside = 0; beside < 3; ++beside) {
                add(0, gradient_strain + warps * beside + j, s * c[beside] * q.Gc[j]);
                add(1, gradient_strain + warps * beside + j, s * c[beside] * q.kc[j]);
            }
            add(1, warp_strain + j, w.first[1] * shape.warp(j, i));
        }
        node_share[0][i] -= w.first[1], node_share[1][i] += w.first[1];
    }
    sum.hessian.topRightCorner<slope_strain, beyond>() =
        sum.hessian.bottomLeftCorner<beyond, slope_strain>().transpose().eval();
    return sum;
}

}  // namespace overbend::stroke
