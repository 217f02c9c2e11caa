#include "sim/stroke/equations.h"

#include <algorithm>

#include "sim/stroke/strain_kernels.h"

namespace overbend::stroke {

namespace {

using material::section_strains;
using material::SectionHessian;
using material::warps;
using strip::node_unknowns;

// All strains of an element: its section's, then g, phi_1, phi_2, and one that is always 0, so that
// processors take them in pairs.
constexpr int beyond_section = section_strains, all_strains = section_strains + 2 + warps;
constexpr int pair_unknowns = 2 * node_unknowns;
static_assert(all_strains == pair_strains && node_unknowns == unknowns_of_node);
using StrainVector = Eigen::Matrix<double, all_strains, 1>;
using StrainMatrix = Eigen::Matrix<double, all_strains, all_strains, Eigen::RowMajor>;

// Columns by an element's strains, or by its section's alone, become columns by the unknowns of its nodes.
template <int rows, int strains>
Eigen::Matrix<double, rows, pair_unknowns> by_unknowns(const strip::ElementStrain& s, double length,
                                                       const Eigen::Matrix<double, rows, strains>& by) {
    constexpr int next = node_unknowns, turn = strip::turn_unknown;
    const double over = 1.0 / length, x = s.tx * over, y = s.ty * over;
    const auto G = by.col(0), k = by.col(1);
    Eigen::Matrix<double, rows, pair_unknowns> to;
    Eigen::Matrix<double, rows, 1> mean = (0.5 * s.g) * G;
    to.col(next) = x * G;
    to.col(next + 1) = y * G;
    for (int j = 0; j < warps; ++j) to.col(next + strip::warp_unknown + j) = over * by.col(2 + j);
    for (int j = 0; j < warps; ++j) to.col(strip::warp_unknown + j) = -to.col(next + strip::warp_unknown + j);
    if constexpr (strains > section_strains) {
        const auto g = by.col(beyond_section);
        mean -= (0.5 * s.G) * g;
        to.col(next) -= y * g;
        to.col(next + 1) += x * g;
        for (int j = 0; j < warps; ++j)
            for (const int node : {0, next})
                to.col(node + strip::warp_unknown + j) += 0.5 * by.col(beyond_section + 1 + j);
    }
    to.col(0) = -to.col(next);
    to.col(1) = -to.col(next + 1);
    to.col(next + turn) = mean + over * k;
    to.col(turn) = mean - over * k;
    return to;
}

// What the element whose shares in both its nodes' sections are `left` and `right` has of them, and of its
// own.
StrainMatrix own_hessian(const ElementSums& e, const NodeSums& a, const NodeSums& b, double left,
                         double right) {
    StrainMatrix H = StrainMatrix::Zero();
    const ElementSums::Coupling with = left * e.with_node[0] + right * e.with_node[1];
    const SectionHessian across = (left * right) * e.of_nodes;
    H.topLeftCorner<section_strains, section_strains>() =
        (left * left) * a.hessian + (right * right) * b.hessian + across + across.transpose();
    H.topLeftCorner<2, 2>() += e.hessian.topLeftCorner<2, 2>();
    H.block<2, section_strains>(0, 0) += with.topRows<2>();
    H.block<section_strains, 2>(0, 0) += with.topRows<2>().transpose();
    constexpr int rest = own_strains - 2;
    H.block<rest, rest>(beyond_section, beyond_section) = e.hessian.bottomRightCorner<rest, rest>();
    H.block<rest, 2>(beyond_section, 0) = e.hessian.bottomLeftCorner<rest, 2>();
    H.block<rest, section_strains>(beyond_section, 0) += with.bottomRows<rest>();
    H.block<section_strains, rest>(0, beyond_section) =
        H.block<rest, section_strains>(beyond_section, 0).transpose();
    return H;
}

ElementChange change_of(const strip::ElementStrain& s, double length) {
    return {s.tx, s.ty, s.G, s.g, 1.0 / length};
}

// Of the element's section in that at a node: 1 at the strip's ends, 1/2 else.
double share_in(int node, int elements) {
    return node == 0 || node == elements ? 1.0 : 0.5;
}

}  // namespace

void Equations::take_over_gradient(const StripStrains& strains, const std::vector<double>& length) {
    const int elements = static_cast<int>(length.size());
    constexpr int rest = own_strains - 2;
    for (int e = 0; e < elements; ++e) {
        const ElementSums& own = by_strains.elements[e];
        StrainVector by;
        by.head<section_strains>() = share_in(e, elements) * by_strains.nodes[e].gradient +
                                     share_in(e + 1, elements) * by_strains.nodes[e + 1].gradient;
        by.head<2>() += own.gradient.head<2>();
        by.segment<rest>(beyond_section) = own.gradient.tail<rest>();
        by(all_strains - 1) = 0.0;
        const Eigen::Matrix<double, 1, pair_unknowns> force =
            by_unknowns<1, all_strains>(strains.elements[e], length[e], by.transpose());
        for (int i = 0; i < pair_unknowns; ++i) gradient[node_unknowns * e + i] += force(i);
    }
}

void Equations::take_over_hessian(const StripStrains& strains, const std::vector<double>& length) {
    const int elements = static_cast<int>(length.size());
    constexpr int rest = own_strains - 2;
    const StrainKernels& kernels = strain_kernels();
    for (int e = 0; e < elements; ++e) {
        const ElementChange here = change_of(strains.elements[e], length[e]);
        const ElementSums& own = by_strains.elements[e];
        const NodeSums &first = by_strains.nodes[e], &second = by_strains.nodes[e + 1];
        const double left = share_in(e, elements), right = share_in(e + 1, elements);
        const int at = node_unknowns * e;
        // And the forces on G and g times their second derivatives.
        const double N = left * first.gradient(0) + right * second.gradient(0) + own.gradient(0);
        kernels.add_own(here, own_hessian(own, first, second, left, right).data(), N,
                        own.gradient(slope_strain), matrix.rows(), at);
        matrix.join(at, node_unknowns * (std::min(elements, e + 3) + 1) - 1);

        if (e + 1 >= elements) continue;
        // With the next element, by the section at the node between them and those beside it.
        const ElementSums& beside = by_strains.elements[e + 1];
        StrainMatrix H = StrainMatrix::Zero();
        H.topLeftCorner<section_strains, section_strains>() =
            0.25 * second.hessian + (0.5 * left) * own.of_nodes +
            (0.5 * share_in(e + 2, elements)) * beside.of_nodes;
        H.block<2, section_strains>(0, 0) += 0.5 * own.with_node[1].topRows<2>();
        H.block<section_strains, 2>(0, 0) += 0.5 * beside.with_node[0].topRows<2>().transpose();
        H.block<rest, section_strains>(beyond_section, 0) = 0.5 * own.with_node[1].bottomRows<rest>();
        H.block<section_strains, rest>(0, beyond_section) =
            0.5 * beside.with_node[0].bottomRows<rest>().transpose();
        kernels.add_pair(here, change_of(strains.elements[e + 1], length[e + 1]), H.data(), matrix.rows(), at,
                         at + node_unknowns);

        if (e + 2 >= elements) continue;
        H.setZero();
        H.topLeftCorner<section_strains, section_strains>() = 0.25 * beside.of_nodes;
        kernels.add_pair(here, change_of(strains.elements[e + 2], length[e + 2]), H.data(), matrix.rows(), at,
                         at + 2 * node_unknowns);
    }
}

}  // namespace overbend::stroke
