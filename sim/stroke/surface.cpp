#include "sim/stroke/surface.h"

#include "sim/stroke/strain_kernels.h"

namespace overbend::stroke {

ElementFace element_face(const SurfaceStrip& strip, int element, double side) {
    ElementFace f;
    f.side = side;
    for (int i = 0; i < 2; ++i)
        f.height[i] = strip.strains->nodes[element + i].heights.y(strip.shape->face(side));
    return f;
}

PointGradient point_gradient(const SurfacePoint& s) {
    PointGradient p;
    p.t = Vec2(s.tx, s.ty), p.n = Vec2(-s.ty, s.tx);
    p.dh << 0.0, 0.0, s.bulge, 0.0, 0.0, -s.bulge, s.N1, s.N2;
    p.dtheta << 0.0, 0.0, s.N1, 0.0, 0.0, s.N2, 0.0, 0.0;
    p.along = -s.height * p.dtheta;
    p.across = p.dh;
    p.along(0) += s.N1 * p.t.x(), p.along(1) += s.N1 * p.t.y();
    p.along(3) += s.N2 * p.t.x(), p.along(4) += s.N2 * p.t.y();
    p.across(0) += s.N1 * p.n.x(), p.across(1) += s.N1 * p.n.y();
    p.across(3) += s.N2 * p.n.x(), p.across(4) += s.N2 * p.n.y();
    return p;
}

void add_point(const SurfacePoint& s, const PointGradient& d, const PointForce& f, FaceSum& sum) {
    const double Ft = f.force.dot(d.t), Fn = f.force.dot(d.n);
    sum.load.noalias() += Ft * d.along + Fn * d.across;
    // df/dx in the section's directions.
    const double D_tt = d.t.dot(f.by_place * d.t), D_tn = d.t.dot(f.by_place * d.n);
    const double D_nt = d.n.dot(f.by_place * d.t), D_nn = d.n.dot(f.by_place * d.n);
    const Vec8 row_t = D_tt * d.along + D_tn * d.across, row_n = D_nt * d.along + D_nn * d.across;
    sum.K.noalias() -= d.along * row_t.transpose();
    sum.K.noalias() -= d.across * row_n.transpose();
    // f . d2x = - 2 Ft dh dtheta - height Fn dtheta^2.
    const Vec8 turn = Ft * d.dh + 0.5 * s.height * Fn * d.dtheta;
    sum.K.noalias() += turn * d.dtheta.transpose();
    sum.K.noalias() += d.dtheta * turn.transpose();
}

HeightGradient height_gradient(const SurfaceStrip& strip, int element, const ElementFace& face) {
    HeightGradient heights;
    for (int node = 0; node < 2; ++node)
        heights.col(node) =
            around_node(*strip.strains, *strip.length, element, node,
                        strip.strains->nodes[element + node].heights.by(strip.shape->face(face.side)));
    return heights;
}

AroundVector spread_out(const Vec8& of_face, const HeightGradient& heights) {
    AroundVector v = of_face(6) * heights.col(0) + of_face(7) * heights.col(1);
    for (int node = 0; node < 2; ++node) v.segment<3>(of_node(node)) += of_face.segment<3>(3 * node);
    return v;
}

AroundMatrix spread_out(const Mat8& K, const HeightGradient& rows, const HeightGradient& columns) {
    Eigen::Matrix<double, around, 8> wide;  // the columns still the eight's
    for (int i = 0; i < 8; ++i) wide.col(i) = spread_out(Vec8(K.col(i)), rows);
    AroundMatrix all;
    for (int i = 0; i < around; ++i) all.col(i) = columns(i, 0) * wide.col(6) + columns(i, 1) * wide.col(7);
    for (int node = 0; node < 2; ++node) all.middleCols<3>(of_node(node)) += wide.middleCols<3>(3 * node);
    return all;
}

void scatter(const SurfaceStrip& strip, int element, const ElementFace& face, const HeightGradient& heights,
             const FaceSum& sum, Equations& to) {
    const AroundRange r = range_around(element, strip.elements());
    if (r.from == 0 && r.to == around) {
        to.matrix.join(r.shift, r.shift + around - 1);
        strain_kernels().add_face(sum.K.data(), heights.col(0).data(), heights.col(1).data(),
                                  to.matrix.rows(), r.shift);
    } else {
        scatter(element, strip.elements(), spread_out(sum.K, heights, heights), to);
    }
    for (int node = 0; node < 2; ++node) {
        const NodeSection& section = strip.strains->nodes[element + node];
        double* gradient = &to.gradient[strip::node_unknowns * (element + node)];
        for (int i = 0; i < 3; ++i) gradient[i] -= sum.load(3 * node + i);
        const double force = sum.load(6 + node);
        NodeSums& at = to.by_strains.nodes[element + node];
        at.gradient -= force * section.heights.by(strip.shape->face(face.side));
        at.hessian -= force * strip.shape->face_curvature(section.strain, section.squares, face.side);
    }
}

}  // namespace overbend::stroke
