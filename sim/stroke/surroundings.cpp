#include "sim/stroke/surroundings.h"

namespace overbend::stroke {

AroundVector around_node(const StripStrains& strains, const std::vector<double>& length, int element,
                         int node, const material::SectionStrain& by) {
    const NodeSection& section = strains.nodes[element + node];
    AroundVector sum = AroundVector::Zero();
    for (const int e : {section.left, section.right}) {
        const strip::StrainGradient d = strip::strain_gradient(strains.elements[e], length[e]);
        for (int side = 0; side < 2; ++side) {
            const int at = of_node(e - element + side);
            for (int i = 0; i < 3; ++i)
                sum(at + i) += 0.5 * (by(0) * d.G[3 * side + i] + by(1) * d.k[3 * side + i]);
            const double slope = (side == 0 ? -0.5 : 0.5) / length[e];
            for (int j = 0; j < material::warps; ++j) sum(at + strip::warp_unknown + j) += slope * by(2 + j);
        }
    }
    return sum;
}

AroundRange range_around(int element, int elements) {
    AroundRange r;
    r.shift = strip::node_unknowns * (element - 1);
    if (element == 0) r.from = strip::node_unknowns;
    if (element + 1 >= elements) r.to = 3 * strip::node_unknowns;
    return r;
}

void scatter(int element, int elements, const AroundMatrix& K, Equations& to) {
    const AroundRange r = range_around(element, elements);
    to.matrix.join(r.shift + r.from, r.shift + r.to - 1);
    for (int i = r.from; i < r.to; ++i) {
        double* row = &to.matrix.at(r.shift + i, r.shift);
        for (int j = r.from; j < r.to; ++j) row[j] += K(i, j);
    }
}

}  // namespace overbend::stroke
