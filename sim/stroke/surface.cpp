#include "sim/stroke/surface.h"

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

namespace {

NodeStrainGradient node_strain_gradient(const SurfaceStrip& strip, int element, int node) {
    const NodeSection& section = strip.strains->nodes[element + node];
    NodeStrainGradient d = NodeStrainGradient::Zero();
    for (const int e : {section.left, section.right})
        add_strain_gradient(strip.strains->elements[e], (*strip.length)[e], e - element, 0.5, d);
    return d;
}

}  // namespace

FaceJacobian face_jacobian(const SurfaceStrip& strip, int element, const ElementFace& face) {
    FaceJacobian J = FaceJacobian::Zero();
    for (int node = 0; node < 2; ++node) {
        for (int i = 0; i < 3; ++i) J(3 * node + i, of_node(node) + i) = 1.0;
        const material::LayerHeights& h = strip.strains->nodes[element + node].heights;
        J.row(6 + node) =
            h.by(strip.shape->face(face.side)).transpose() * node_strain_gradient(strip, element, node);
    }
    return J;
}

AroundMatrix spread_out(const SurfaceStrip& strip, int element, const ElementFace& face,
                        const FaceJacobian& J, const FaceSum& sum) {
    AroundMatrix K;
    const FaceJacobian KJ = sum.K * J;
    K.noalias() = J.transpose() * KJ;
    for (int node = 0; node < 2; ++node) {
        const double force = sum.load(6 + node);
        const NodeSection& section = strip.strains->nodes[element + node];
        const NodeStrainGradient d = node_strain_gradient(strip, element, node);
        const NodeStrainGradient Hd =
            force * (strip.shape->face_curvature(section.strain, section.squares, face.side) * d);
        K.noalias() -= d.transpose() * Hd;
        const double by_G = section.heights.by(strip.shape->face(face.side))(0);
        for (const int e : {section.left, section.right})
            add_strain_curvature(strip.strains->elements[e], (*strip.length)[e], e - element,
                                 -0.5 * force * by_G, 0.0, K);
    }
    return K;
}

void scatter(const SurfaceStrip& strip, int element, const ElementFace& face, const FaceJacobian& J,
             const FaceSum& sum, Equations& to) {
    const AroundVector gradient = -(J.transpose() * sum.load);
    scatter(element, strip.elements(), gradient, spread_out(strip, element, face, J, sum).transpose(), to);
}

}  // namespace overbend::stroke
