#include "sim/material/section_shape.h"

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>
#include <numeric>
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

// The curvature q that R. Hill's section is taken at: k itself, held where that section would fold
// (section_shape.h). With its derivatives by G and k.
struct Held {
    double q = 0.0;
    bool same = true;
    double G = 0.0, k = 1.0, GG = 0.0, Gk = 0.0, kk = 0.0;
    // Second derivatives by G and k of what has those of (G, q), and by_q once.
    void chain(double by_q, double& of_GG, double& of_Gk, double& of_kk) const {
        of_GG += 2.0 * of_Gk * G + of_kk * G * G + by_q * GG;
        of_Gk = of_Gk * k + of_kk * G * k + by_q * Gk;
        of_kk = of_kk * k * k + by_q * kk;
    }
};

Held held(double G, double k, double thickness) {
    constexpr double from = 0.85, room = 0.1;
    Held h;
    const double square = G * G, x = thickness * std::abs(k) / square;
    h.q = k;
    if (x <= from) return h;
    const double th = std::tanh((x - from) / room), s = from + room * th, slope = 1.0 - th * th;
    const double curve = -2.0 * th * slope / room, sign = k < 0.0 ? -1.0 : 1.0, over = sign / thickness;
    h.same = false;
    h.q = over * square * s, h.k = slope, h.G = 2.0 * over * G * (s - x * slope);
    h.kk = sign * curve * thickness / square, h.Gk = -2.0 * x * curve / G;
    h.GG = 2.0 * over * (s - x * slope + 2.0 * x * x * curve);
    return h;
}

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

SectionShape::SectionShape(const Layers& layers)
    : SectionShape(std::accumulate(layers.weight.begin(), layers.weight.end(), 0.0), layers.height) {
    std::copy(layers.weight.begin(), layers.weight.end(), weight_);
}

SectionShape::SectionShape(double thickness, const std::vector<double>& heights)
    : layers_(static_cast<int>(heights.size())), thickness_(thickness) {
    std::copy(heights.begin(), heights.end(), height_);
    const double half = 0.5 * thickness_;
    for (int j = 0; j < warps; ++j) {
        middle_[j] = warp_at(j + 1, 0.0, thickness_);
        for (int i = 0; i < layers_; ++i) {
            warp_[j][i] = warp_at(j + 1, height_[i] / half, thickness_);
            slope_[j][i] = legendre(j + 1, height_[i] / half);
        }
    }
    static const Layers points = gauss_layers(1.0, section_points);
    for (int l = 0; l < section_points; ++l) point_[l] = thickness_ * points.height[l];
    // The polynomial through values f_l at the points is sum_m (2 m + 1)/2 L_m sum_l w_l L_m(x_l) f_l, with
    // Gauss's weights w for [-1, 1]. Its integral from 0 to z:
    const auto integral_to = [&](double z) {
        const auto part = [&](double x, int l) {
            double sum = 0.0;
            for (int m = 0; m < section_points; ++m)
                sum += 0.5 * (2 * m + 1) * legendre(m, point_[l] / half) *
                       (legendre_integral(m, x) - legendre_integral(m, 0.0));
            return thickness_ * points.weight[l] * sum;
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

double SectionShape::face_square(const SectionStrain& E, double side) const {
    const double z = place_of(face(side));
    LayerSquare q;
    fill(E, &z, 1, &q);
    return q.value;
}

// T_j with dz = r dy, r = G - k y, z = G y - k y^2/2 and y the height without warp is an integral of a
// polynomial of y, and so are its derivatives at a fixed z, where dy/dG = - y/r and dy/dk = y^2/(2 r):
//   T = G psi(0) + int r^2 L dy    T_G = psi(0) + G int L dy    T_k = - int z L dy
//   T_Gk = z L y/r - int y (z L)' dy    T_kk = - z L y^2/(2 r) + int y^2 (z L)' dy/2    T_GG = - 2 k T_Gk/G
// with (z L)' by z, L_1 = 2 z/t, L_2 = 6 z^2/t^2 - 1/2. All at the held curvature. Two layers at a time.
// False: folded.
bool SectionShape::fill(const SectionStrain& E, const double* height, int count, LayerSquare* s) const {
    const double G = E(0), c1 = E(2), c2 = E(3), least = 1e-3 * G * G, t = thickness_;
    if (!(G > 0.0)) return false;
    const Held base = held(G, E(1), t);
    const double k = base.q, once = 2.0 / t, twice = 6.0 / (t * t), square = G * G;
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
        const Pair q1 = -2.0 * once * y * z2, q2 = -2.0 * y * (twice * z3 - 0.5 * z1);
        const Pair G1 = 2.0 * (middle_[0] + a * once * z1) + base.G * q1;
        const Pair G2 = 2.0 * (middle_[1] + a * (twice * z2 - 0.5)) + base.G * q2;
        const Pair k1 = base.k * q1, k2 = base.k * q2;
        const Pair value = square - 2.0 * E(1) * z + c1 * T1 + c2 * T2;
        const Pair by_G = 2.0 * G + c1 * G1 + c2 * G2, by_k = c1 * k1 + c2 * k2 - 2.0 * z;
        for (int j = 0; j < 2; ++j)
            s[both[j]] = {value(j), {by_G(j), by_k(j), T1(j), T2(j)}, {G1(j), G2(j)}, {k1(j), k2(j)}};
        if (!(value.minCoeff() > least)) return false;
    }
    return true;
}

void SectionShape::fill(const SectionStrain& E, const double* height, int count, SquareCurvature* s) const {
    const double G = E(0), once = 2.0 / thickness_, twice = 6.0 / (thickness_ * thickness_);
    const Held base = held(G, E(1), thickness_);
    const double k = base.q;
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
        if (base.same) continue;
        const Pair z1 = 0.5 * a - b * (1.0 / 6.0), z2 = a * (a * (1.0 / 3.0) - 0.25 * b) + 0.05 * bb;
        const Pair z3 = a * (a * (0.25 * a - 0.3 * b) + 0.125 * bb) - bb * b * (1.0 / 56.0);
        const Pair by_q = -2.0 * y * (E(2) * once * z2 + E(3) * (twice * z3 - 0.5 * z1));
        for (int j = 0; j < 2; ++j) {
            SquareCurvature& of = s[both[j]];
            of = {GG(j), Gk(j), kk(j)};
            base.chain(by_q(j), of.GG, of.Gk, of.kk);
        }
    }
}

void SectionShape::curvatures(const SectionStrain& E, SquareCurvature* s) const {
    fill(E, height_, layers_, s);
}

// y = 2 z/(G + r) of R. Hill's section at the held curvature and the integral of 1/lambda - 1/r.
void SectionShape::heights(const SectionStrain& E, const PointSquares& s, LayerHeights& h) const {
    const Held base = held(E(0), E(1), thickness_);
    const double G = E(0), k = base.q;
    LayerHeights::Place of[section_points];
    for (int l = 0; l < section_points; ++l) {
        const LayerSquare& q = s.point[l];
        const double inverse = 1.0 / std::sqrt(q.value), by = -0.5 * inverse / q.value;
        const double plain = 1.0 / std::sqrt(G * G - 2.0 * point_[l] * k), cube = plain * plain * plain;
        of[l] << inverse - plain, by * q.by(0) + (G - base.G * point_[l]) * cube,
            by * q.by(1) - base.k * point_[l] * cube, by * q.by(2), by * q.by(3), 0.0;
    }
    for (int i = 0; i < layers_ + 2; ++i) {
        const double z = place_of(i), r = std::sqrt(G * G - 2.0 * z * k), D = G + r;
        const double y = 2.0 * z / D, by_q = z * y / (r * D);
        LayerHeights::Place sum;
        sum << y, base.G * by_q - y / r, base.k * by_q, 0.0, 0.0, 0.0;
        for (int l = 0; l < section_points; ++l) sum += integral_[i](l) * of[l];
        h.place[i] = sum;
    }
}

bool SectionShape::heights(const SectionStrain& E, LayerHeights& h) const {
    PointSquares s;
    squares(E, s);
    if (!s.folded) heights(E, s, h);
    return !s.folded;
}

namespace {

// First derivative by the held curvature and second ones of shares of R. Hill's heights and of 1/r.
struct PlainCurvature {
    double by_q = 0.0, GG = 0.0, Gk = 0.0, kk = 0.0;
    // share times 2 z/(G + r)
    void add_height(double G, double q, double z, double share) {
        const double r = std::sqrt(G * G - 2.0 * z * q), D = G + r, rD = r * D, zz = share * 2.0 * z * z;
        by_q += zz / (rD * D);
        GG += share * 2.0 * z / (r * r * r);
        Gk -= zz * (G + 2.0 * r) / (r * rD * rD);
        kk += zz * z * (D + 2.0 * r) / (rD * rD * rD);
    }
    // share times - 1/r
    void add_inverse(double G, double q, double z, double share) {
        const double plain = G * G - 2.0 * z * q, third = share / (plain * std::sqrt(plain));
        const double fifth = 3.0 * third / plain;
        by_q -= z * third;
        GG -= fifth * G * G - third, Gk += fifth * G * z, kk -= fifth * z * z;
    }
};

}  // namespace

// Second derivatives of what `plain` has of R. Hill's section and of sum_l share_l (1/lambda_l - 1/r_l).
SectionHessian SectionShape::warped_curvature(const SectionStrain& E, const PointSquares& s, const Row& share,
                                              const double* height, const double* of_height,
                                              int heights) const {
    const Held base = held(E(0), E(1), thickness_);
    PlainCurvature plain;
    for (int i = 0; i < heights; ++i) plain.add_height(E(0), base.q, height[i], of_height[i]);
    for (int l = 0; l < section_points; ++l) plain.add_inverse(E(0), base.q, point_[l], share(l));
    if (!base.same) base.chain(plain.by_q, plain.GG, plain.Gk, plain.kk);
    SectionHessian H = SectionHessian::Zero();
    H.topLeftCorner<2, 2>() << plain.GG, plain.Gk, plain.Gk, plain.kk;
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
    }
    return H;
}

SectionHessian SectionShape::height_curvature(const SectionStrain& E, const PointSquares& s,
                                              const double* share) const {
    Row of = Row::Zero();
    for (int i = 0; i < layers_; ++i) of += share[i] * integral_[i];
    return warped_curvature(E, s, of, height_, share, layers_);
}

SectionHessian SectionShape::face_curvature(const SectionStrain& E, const PointSquares& s,
                                            double side) const {
    const double height = place_of(face(side)), whole = 1.0;
    return warped_curvature(E, s, integral_[face(side)], &height, &whole, 1);
}

}  // namespace overbend::material
