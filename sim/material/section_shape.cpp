#include "sim/material/section_shape.h"

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>
#include <string>

#include "sim/errors.h"

namespace overbend::material {

namespace {

double legendre(int n, double x) {
    double before = 1.0, now = x;
    if (n == 0) return before;
    for (int i = 1; i < n; ++i) {
        const double next = ((2 * i + 1) * x * now - i * before) / (i + 1);
        before = now, now = next;
    }
    return now;
}

// Integral of Legendre's polynomial from -1 to x.
double legendre_integral(int n, double x) {
    return n == 0 ? x + 1.0 : (legendre(n + 1, x) - legendre(n - 1, x)) / (2 * n + 1);
}

using Pair = Eigen::Array2d;

double warp_at(int j, double x, double thickness) {
    return thickness * (legendre(j + 1, x) - legendre(j - 1, x)) / (2.0 * (2 * j + 1));
}

}  // namespace

// Golub & Welsch: the points are the eigenvalues of the Legendre polynomials' Jacobi matrix, the weights
// twice the squares of the eigenvectors' first entries.
Layers gauss_layers(double thickness, int count) {
    if (count < least_layers || count > most_layers)
        throw OutOfRange("layers", std::to_string(count), "give 3 to 64");
    Eigen::MatrixXd jacobi = Eigen::MatrixXd::Zero(count, count);
    for (int i = 1; i < count; ++i) jacobi(i, i - 1) = jacobi(i - 1, i) = i / std::sqrt(4.0 * i * i - 1.0);
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(jacobi);

    Layers layers;
    for (int i = 0; i < count; ++i) {
        // Made exactly odd and even about the middle, so that a strip turned over is the same strip.
        const int j = count - 1 - i;
        const double point = 0.5 * (solver.eigenvalues()(i) - solver.eigenvalues()(j));
        const double a = solver.eigenvectors()(0, i), b = solver.eigenvectors()(0, j);
        layers.height.push_back(0.5 * thickness * point);
        layers.weight.push_back(0.5 * thickness * (a * a + b * b));
    }
    return layers;
}

SectionShape::SectionShape(const Layers& layers) : layers_(static_cast<int>(layers.height.size())) {
    for (int i = 0; i < layers_; ++i) {
        height_[i] = layers.height[i], weight_[i] = layers.weight[i];
        thickness_ += weight_[i];
    }
    const double half = 0.5 * thickness_;
    for (int j = 0; j < warps; ++j) {
        middle_[j] = warp_at(j + 1, 0.0, thickness_);
        for (int i = 0; i < layers_; ++i) {
            warp_[j][i] = warp_at(j + 1, height_[i] / half, thickness_);
            slope_[j][i] = legendre(j + 1, height_[i] / half);
        }
    }
    const Layers points = gauss_layers(thickness_, section_points);
    for (int l = 0; l < section_points; ++l) point_[l] = points.height[l];
    // The polynomial through values f_l at the points is sum_m (2 m + 1)/2 L_m sum_l w_l L_m(x_l) f_l, with
    // Gauss's weights w for [-1, 1]. Its integral from 0 to z:
    const auto integral_to = [&](double z) {
        const auto part = [&](double x, int l) {
            double sum = 0.0;
            for (int m = 0; m < section_points; ++m)
                sum += 0.5 * (2 * m + 1) * legendre(m, point_[l] / half) *
                       (legendre_integral(m, x) - legendre_integral(m, 0.0));
            return points.weight[l] * sum;
        };
        Row row;  // made exactly odd about the middle
        for (int l = 0; l < section_points; ++l)
            row(l) = 0.5 * (part(z / half, l) - part(-z / half, section_points - 1 - l));
        return row;
    };
    for (int i = 0; i < layers_ + 2; ++i) integral_.push_back(integral_to(place_of(i)));
}

bool SectionShape::squares(const SectionStrain& E, LayerSquare* s) const {
    return fill(E, height_, layers_, s);
}

void SectionShape::squares(const SectionStrain& E, PointSquares& s) const {
    s.folded = !fill(E, point_, section_points, s.point);
}

// T_j with dz = r dy, r = G - k y, z = G y - k y^2/2 and y the height without warp is an integral of a
// polynomial of y, and so are its derivatives at a fixed z, where dy/dG = - y/r and dy/dk = y^2/(2 r):
//   T = G psi(0) + int r^2 L dy    T_G = psi(0) + G int L dy    T_k = - int z L dy
//   T_Gk = z L y/r - int y (z L)' dy    T_kk = - z L y^2/(2 r) + int y^2 (z L)' dy/2    T_GG = - 2 k T_Gk/G
// with (z L)' by z, L_1 = 2 z/t, L_2 = 6 z^2/t^2 - 1/2. Two layers at a time. False: folded.
bool SectionShape::fill(const SectionStrain& E, const double* height, int count, LayerSquare* s) const {
    const double G = E(0), k = E(1), c1 = E(2), c2 = E(3), least = 1e-3 * G * G, t = thickness_;
    if (!(G > 0.0) || !(G * G - t * std::abs(k) > least)) return false;
    const double once = 2.0 / t, twice = 6.0 / (t * t), square = G * G;
    for (int i = 0; i < count; i += 2) {
        const int both[2] = {i, i + 1 < count ? i + 1 : i};
        const Pair z(height[both[0]], height[both[1]]);
        const Pair plain = square - 2.0 * k * z, y = 2.0 * z / (G + plain.sqrt());
        const Pair a = G * y, b = k * y * y, mixed = k * a, other = k * b, bb = b * b;
        // Integrals over y, divided by y.
        const Pair z1 = 0.5 * a - b * (1.0 / 6.0), z2 = a * (a * (1.0 / 3.0) - 0.25 * b) + 0.05 * bb;
        const Pair z3 = a * (a * (0.25 * a - 0.3 * b) + 0.125 * bb) - bb * b * (1.0 / 56.0);
        const Pair r2 = square - mixed + other * (1.0 / 3.0);
        const Pair r2z = a * (0.5 * square - mixed * (5.0 / 6.0) + 0.5 * other) - 0.1 * other * b;
        const Pair r2z2 = a * (a * (square / 3.0 - 0.75 * mixed + 0.65 * other) - 0.25 * other * b) +
                          other * bb * (1.0 / 28.0);
        const Pair T1 = 2.0 * (G * middle_[0] + y * once * r2z);
        const Pair T2 = 2.0 * (G * middle_[1] + y * (twice * r2z2 - 0.5 * r2));
        const Pair G1 = 2.0 * (middle_[0] + a * once * z1), G2 = 2.0 * (middle_[1] + a * (twice * z2 - 0.5));
        const Pair k1 = -2.0 * once * y * z2, k2 = -2.0 * y * (twice * z3 - 0.5 * z1);
        const Pair value = plain + c1 * T1 + c2 * T2;
        const Pair by_G = 2.0 * G + c1 * G1 + c2 * G2, by_k = c1 * k1 + c2 * k2 - 2.0 * z;
        for (int j = 0; j < 2; ++j)
            s[both[j]] = {
                value(j), {by_G(j), by_k(j), T1(j), T2(j)}, {G1(j), G2(j)}, {k1(j), k2(j)}};
        if (!(value.minCoeff() > least)) return false;
    }
    return true;
}

void SectionShape::fill(const SectionStrain& E, const double* height, int count, SquareCurvature* s) const {
    const double G = E(0), k = E(1), once = 2.0 / thickness_, twice = 6.0 / (thickness_ * thickness_);
    for (int i = 0; i < count; i += 2) {
        const int both[2] = {i, i + 1 < count ? i + 1 : i};
        const Pair z(height[both[0]], height[both[1]]);
        const Pair r = (G * G - 2.0 * k * z).sqrt(), y = 2.0 * z / (G + r), over = z / r;
        const Pair a = G * y, b = k * y * y, bb = b * b;
        const Pair yz = a * (1.0 / 3.0) - 0.125 * b, yz2 = a * (0.25 * a - 0.2 * b) + bb * (1.0 / 24.0);
        const Pair y2z = 0.25 * a - 0.1 * b, y2z2 = a * (0.2 * a - b * (1.0 / 6.0)) + bb * (1.0 / 28.0);
        const Pair zL1 = once * z * over, zL2 = over * (twice * z * z - 0.5);
        const Pair Gk1 = zL1 - 2.0 * once * y * yz, Gk2 = zL2 - y * (3.0 * twice * yz2 - 0.25);
        const Pair kk1 = once * y * y2z - 0.5 * zL1;
        const Pair kk2 = y * (1.5 * twice * y2z2 - 1.0 / 12.0) - 0.5 * zL2;
        const Pair Gk = 2.0 * y * (E(2) * Gk1 + E(3) * Gk2), GG = 2.0 - (2.0 * k / G) * Gk;
        const Pair kk = 2.0 * y * y * (E(2) * kk1 + E(3) * kk2);
        for (int j = 0; j < 2; ++j) s[both[j]] = {GG(j), Gk(j), kk(j)};
    }
}

void SectionShape::curvatures(const SectionStrain& E, SquareCurvature* s) const {
    fill(E, height_, layers_, s);
}

// y = 2 z/(G + r) of R. Hill's section and the integral of 1/lambda - 1/r.
void SectionShape::heights(const SectionStrain& E, const PointSquares& s, LayerHeights& h) const {
    const double G = E(0), k = E(1);
    LayerHeights::Place of[section_points];
    for (int l = 0; l < section_points; ++l) {
        const LayerSquare& q = s.point[l];
        const double inverse = 1.0 / std::sqrt(q.value), by = -0.5 * inverse / q.value;
        const double plain = 1.0 / std::sqrt(G * G - 2.0 * point_[l] * k), cube = plain * plain * plain;
        of[l] << inverse - plain, by * q.by(0) + G * cube, by * q.by(1) - point_[l] * cube, by * q.by(2),
            by * q.by(3), 0.0;
    }
    for (int i = 0; i < layers_ + 2; ++i) {
        const double z = place_of(i), r = std::sqrt(G * G - 2.0 * z * k), D = G + r;
        const double y = 2.0 * z / D;
        LayerHeights::Place sum;
        sum << y, -y / r, z * y / (r * D), 0.0, 0.0, 0.0;
        for (int l = 0; l < section_points; ++l) sum += integral_[i](l) * of[l];
        h.place[i] = sum;
    }
}

namespace {

// Adds share times the second derivatives of 2 z/(G + r) by G and k.
void add_plain_curvature(double G, double k, double z, double share, SectionHessian& H) {
    const double r = std::sqrt(G * G - 2.0 * z * k), D = G + r, rD = r * D;
    H(0, 0) += share * 2.0 * z / (r * r * r);
    const double Gk = -share * 2.0 * z * z * (G + 2.0 * r) / (r * rD * rD);
    H(0, 1) += Gk, H(1, 0) += Gk;
    H(1, 1) += share * 2.0 * z * z * z * (D + 2.0 * r) / (rD * rD * rD);
}

}  // namespace

// Second derivatives of sum_l share_l (1/lambda_l - 1/r_l).
SectionHessian SectionShape::warped_curvature(const SectionStrain& E, const PointSquares& s,
                                              const Row& share) const {
    SectionHessian H = SectionHessian::Zero();
    SquareCurvature curve[section_points];
    fill(E, point_, section_points, curve);
    for (int l = 0; l < section_points; ++l) {
        const LayerSquare& q = s.point[l];
        const double once = -0.5 * share(l) / (std::sqrt(q.value) * q.value);  // by lambda^2
        H += (-1.5 * once / q.value) * q.by * q.by.transpose();
        H(0, 0) += once * curve[l].GG, H(1, 1) += once * curve[l].kk;
        H(0, 1) += once * curve[l].Gk, H(1, 0) += once * curve[l].Gk;
        for (int j = 0; j < warps; ++j) {
            H(0, 2 + j) += once * q.Gc[j], H(2 + j, 0) += once * q.Gc[j];
            H(1, 2 + j) += once * q.kc[j], H(2 + j, 1) += once * q.kc[j];
        }
        const double G = E(0), z = point_[l], plain = G * G - 2.0 * z * E(1), r = std::sqrt(plain);
        const double third = share(l) / (plain * r), fifth = 3.0 * third / plain;
        H(0, 0) -= fifth * G * G - third, H(1, 1) -= fifth * z * z;
        H(0, 1) += fifth * G * z, H(1, 0) += fifth * G * z;
    }
    return H;
}

SectionHessian SectionShape::height_curvature(const SectionStrain& E, const PointSquares& s,
                                              const double* share) const {
    Row of = Row::Zero();
    SectionHessian plain = SectionHessian::Zero();
    for (int i = 0; i < layers_; ++i) {
        of += share[i] * integral_[i];
        add_plain_curvature(E(0), E(1), height_[i], share[i], plain);
    }
    return plain + warped_curvature(E, s, of);
}

SectionHessian SectionShape::face_curvature(const SectionStrain& E, const PointSquares& s,
                                            double side) const {
    SectionHessian plain = SectionHessian::Zero();
    add_plain_curvature(E(0), E(1), place_of(face(side)), 1.0, plain);
    return plain + warped_curvature(E, s, integral_[face(side)]);
}

}  // namespace overbend::material
