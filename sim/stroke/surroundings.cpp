#include "sim/stroke/surroundings.h"

namespace overbend::stroke {

void add_strain_gradient(const strip::ElementStrain& of, double length, int of_minus_about, double share,
                         NodeStrainGradient& gradient) {
    const strip::StrainGradient d = strip::strain_gradient(of, length);
    for (int node = 0; node < 2; ++node) {
        const int at = of_node(of_minus_about + node);
        for (int i = 0; i < 3; ++i) {
            gradient(0, at + i) += share * d.G[3 * node + i];
            gradient(1, at + i) += share * d.k[3 * node + i];
        }
        const double slope = (node == 0 ? -share : share) / length;
        for (int j = 0; j < material::warps; ++j) gradient(2 + j, at + strip::warp_unknown + j) += slope;
    }
}

void add_strain_curvature(const strip::ElementStrain& of, double length, int of_minus_about, double N,
                          double Q, AroundMatrix& K) {
    const Eigen::Matrix<double, 6, 6> own = strip::strain_curvature(of, length, N, Q);
    for (int a = 0; a < 2; ++a)
        for (int b = 0; b < 2; ++b)
            K.block<3, 3>(of_node(of_minus_about + a), of_node(of_minus_about + b)) +=
                own.block<3, 3>(3 * a, 3 * b);
}

AroundRange range_around(int element, int elements) {
    AroundRange r;
    r.shift = strip::node_unknowns * (element - 1);
    if (element == 0) r.from = strip::node_unknowns;
    if (element + 1 >= elements) r.to = 3 * strip::node_unknowns;
    return r;
}

void scatter(int element, int elements, const AroundVector& gradient, const AroundMatrix& K, Equations& to) {
    const AroundRange r = range_around(element, elements);
    to.matrix.join(r.shift + r.from, r.shift + r.to - 1);
    for (int i = r.from; i < r.to; ++i) {
        to.gradient[r.shift + i] += gradient(i);
        double* row = &to.matrix.at(r.shift + i, r.shift);
        const double* column = K.col(i).data();
        for (int j = r.from; j < r.to; ++j) row[j] += column[j];
    }
}

}  // namespace overbend::stroke
