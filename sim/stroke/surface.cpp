#include "sim/stroke/surface.h"

namespace overbend::stroke {

FaceGradient face_gradient(const SurfaceStrip& strip, int element, const ElementFace& face) {
    FaceGradient d;
    for (int i = 0; i < 2; ++i) {
        d.dG[i].setZero();
        d.dk[i].setZero();
        for (const int e : {face.strain[i].left, face.strain[i].right}) {
            const strip::ElementStrain& s = (*strip.strain)[e];
            const double half = 0.5 / (*strip.length)[e];
            const int at = 3 * (e - element + 1);
            d.dG[i](at) -= half * s.tx, d.dG[i](at + 1) -= half * s.ty, d.dG[i](at + 2) += 0.25 * s.g;
            d.dG[i](at + 3) += half * s.tx, d.dG[i](at + 4) += half * s.ty, d.dG[i](at + 5) += 0.25 * s.g;
            d.dk[i](at + 2) -= half, d.dk[i](at + 5) += half;
        }
        d.dy[i] = face.height[i].y_G * d.dG[i] + face.height[i].y_k * d.dk[i];
    }
    return d;
}

void add_height_curvature(const SurfaceStrip& strip, int element, const ElementFace& face,
                          const FaceGradient& d, int node, double Fn, Mat12& K) {
    const SurfaceHeight& h = face.height[node];
    K.noalias() -= Fn * h.y_GG * d.dG[node] * d.dG[node].transpose();
    K.noalias() -= Fn * h.y_kk * d.dk[node] * d.dk[node].transpose();
    const Mat12 cross = Fn * h.y_Gk * d.dG[node] * d.dk[node].transpose();
    K -= cross + cross.transpose();
    for (const int e : {face.strain[node].left, face.strain[node].right}) {
        const strip::ElementStrain& s = (*strip.strain)[e];
        const double share = 0.5 * Fn * h.y_G, length = (*strip.length)[e];
        const int at = 3 * (e - element + 1);
        // d2G = 2 (n . dd) dm - G dm^2, dm = (dth1 + dth2)/2, dd = (dr2 - dr1)/L.
        const double across[6] = {s.ty / length, -s.tx / length, 0.0, -s.ty / length, s.tx / length, 0.0};
        for (int a = 0; a < 6; ++a)
            for (const int m : {2, 5}) {
                K(at + a, at + m) -= 0.5 * share * across[a];
                K(at + m, at + a) -= 0.5 * share * across[a];
            }
        for (const int a : {2, 5})
            for (const int b : {2, 5}) K(at + a, at + b) += 0.25 * share * s.G;
    }
}

PointGradient point_gradient(const SurfacePoint& s, const FaceGradient& d) {
    PointGradient p;
    p.t = Vec2(s.tx, s.ty), p.n = Vec2(-s.ty, s.tx);
    p.dh = s.N1 * d.dy[0] + s.N2 * d.dy[1];
    p.dh(5) += s.bulge, p.dh(8) -= s.bulge;
    p.dtheta.setZero();
    p.dtheta(5) = s.N1, p.dtheta(8) = s.N2;
    p.along = -s.height * p.dtheta;
    p.across = p.dh;
    p.along(3) += s.N1 * p.t.x(), p.along(4) += s.N1 * p.t.y();
    p.along(6) += s.N2 * p.t.x(), p.along(7) += s.N2 * p.t.y();
    p.across(3) += s.N1 * p.n.x(), p.across(4) += s.N1 * p.n.y();
    p.across(6) += s.N2 * p.n.x(), p.across(7) += s.N2 * p.n.y();
    return p;
}

void add_point(const SurfacePoint& s, const PointGradient& d, const PointForce& f, Vec12& load, Mat12& K) {
    const double Ft = f.force.dot(d.t), Fn = f.force.dot(d.n);
    load.noalias() += Ft * d.along + Fn * d.across;
    // df/dx in the section's directions.
    const double D_tt = d.t.dot(f.by_place * d.t), D_tn = d.t.dot(f.by_place * d.n);
    const double D_nt = d.n.dot(f.by_place * d.t), D_nn = d.n.dot(f.by_place * d.n);
    const Vec12 row_t = D_tt * d.along + D_tn * d.across, row_n = D_nt * d.along + D_nn * d.across;
    K.noalias() -= d.along * row_t.transpose();
    K.noalias() -= d.across * row_n.transpose();
    // f . d2x = - 2 Ft dh dtheta - height Fn dtheta^2 (+ Fn d2y).
    const Vec12 turn = Ft * d.dh + 0.5 * s.height * Fn * d.dtheta;
    K.noalias() += turn * d.dtheta.transpose();
    K.noalias() += d.dtheta * turn.transpose();
}

void scatter(const SurfaceStrip& strip, int element, const Vec12& load, const Mat12& K, Equations& to) {
    const int shift = 3 * (element - 1);
    const int nodes = static_cast<int>(strip.length->size()) + 1;
    const int first = element == 0 ? 3 : 0, end = element + 2 >= nodes ? 9 : 12;
    to.matrix.join(shift + first, shift + end - 1);
    for (int i = first; i < end; ++i) {
        to.gradient[shift + i] -= load(i);
        for (int j = first; j < end; ++j) to.matrix.at(shift + i, shift + j) += K(i, j);
    }
}

}  // namespace overbend::stroke
