#include "sim/material/section_shape.h"

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>
#include <numeric>
#include <string>

#include "sim/errors.h"
#include "sim/material/warped_stretch.h"

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
    const double half = 0.5 * thickness_;
    const int padding = padded_layers();
    places_.places = padding + lanes;
    for (int i = 0; i < places_.places; ++i)
        places_.height[i] = i == face(-1.0) ? -half : i >= padding ? half : heights[std::min(i, layers_ - 1)];
    for (int j = 0; j < warps; ++j) {
        middle_[j] = warp_at(j + 1, 0.0, thickness_);
        for (int i = 0; i < padding; ++i) {
            warp_[j][i] = warp_at(j + 1, places_.height[i] / half, thickness_);
            slope_[j][i] = legendre(j + 1, places_.height[i] / half);
        }
    }
    static const Layers points = gauss_layers(1.0, section_points);
    for (int l = 0; l < point_lanes; ++l)
        places_.point[l] = thickness_ * points.height[std::min(l, section_points - 1)];
    // The polynomial through values f_l at the points is sum_m (2 m + 1)/2 L_m sum_l w_l L_m(x_l) f_l, with
    // Gauss's weights w for [-1, 1]. A place's height has its integral from 0 to there.
    const auto part = [&](double x, int l) {
        double sum = 0.0;
        for (int m = 0; m < section_points; ++m)
            sum += 0.5 * (2 * m + 1) * legendre(m, places_.point[l] / half) *
                   (legendre_integral(m, x) - legendre_integral(m, 0.0));
        return thickness_ * points.weight[l] * sum;
    };
    for (int l = 0; l < section_points; ++l)
        for (int i = 0; i < places_.places; ++i) {  // made exactly odd about the middle
            const double x = places_.height[i] / half;
            places_.share[l][i] = 0.5 * (part(x, l) - part(-x, section_points - 1 - l));
        }
}

// Held from t k = 0.85 G^2 on, short of 0.95 G^2.
HeldSection SectionShape::held(const SectionStrain& E) const {
    constexpr double from = 0.85, room = 0.1;
    const double G = E(0), k = E(1), square = G * G, x = thickness_ * std::abs(k) / square;
    HeldSection at;
    at.G = G, at.k = at.q = k;
    at.thickness = thickness_;
    for (int j = 0; j < warps; ++j) at.c[j] = E(2 + j), at.middle[j] = middle_[j];
    if (x <= from) return at;
    const double th = std::tanh((x - from) / room), s = from + room * th, slope = 1.0 - th * th;
    const double curve = -2.0 * th * slope / room, sign = k < 0.0 ? -1.0 : 1.0, over = sign / thickness_;
    at.same = false;
    at.q = over * square * s, at.q_k = slope, at.q_G = 2.0 * over * G * (s - x * slope);
    at.q_kk = sign * curve * thickness_ / square, at.q_Gk = -2.0 * x * curve / G;
    at.q_GG = 2.0 * over * (s - x * slope + 2.0 * x * x * curve);
    return at;
}

namespace {

LayerSquare square_at(const HeldSection& at, double z) {
    const Stretch<double> s = stretch_at(at, z, std::sqrt(plain_square(at, z)));
    return {s.value, {s.by[0], s.by[1], s.by[2], s.by[3]}, {s.Gc[0], s.Gc[1]}, {s.kc[0], s.kc[1]}};
}

}  // namespace

bool SectionShape::squares(const SectionStrain& E, LayerSquare* s) const {
    if (!(E(0) > 0.0)) return false;
    const HeldSection at = held(E);
    for (int i = 0; i < layers_; ++i) {
        s[i] = square_at(at, height(i));
        if (!(s[i].value > least_square * at.G * at.G)) return false;
    }
    return true;
}

void SectionShape::curvatures(const SectionStrain& E, SquareCurvature* s) const {
    const HeldSection at = held(E);
    for (int i = 0; i < layers_; ++i) {
        const StretchCurve<double> c =
            stretch_curve_at(at, height(i), std::sqrt(plain_square(at, height(i))));
        s[i] = {c.GG, c.Gk, c.kk};
    }
}

void SectionShape::squares(const SectionStrain& E, PointSquares& s) const {
    s.folded = !(E(0) > 0.0) || !section_kernels().squares(held(E), places_, s);
}

double SectionShape::face_square(const SectionStrain& E, double side) const {
    return square_at(held(E), height(face(side))).value;
}

void SectionShape::heights(const SectionStrain& E, const PointSquares& s, LayerHeights& h) const {
    section_kernels().heights(held(E), places_, s, h);
}

bool SectionShape::heights(const SectionStrain& E, LayerHeights& h) const {
    PointSquares s;
    squares(E, s);
    if (!s.folded) heights(E, s, h);
    return !s.folded;
}

SectionHessian SectionShape::height_curvature(const SectionStrain& E, const PointSquares& s,
                                              const double* share) const {
    SectionHessian H;
    section_kernels().height_curvature(held(E), places_, s, 0, padded_layers(), share, H.data());
    return H;
}

SectionHessian SectionShape::face_curvature(const SectionStrain& E, const PointSquares& s,
                                            double side) const {
    double share[lanes] = {};
    share[face(side) - padded_layers()] = 1.0;
    SectionHessian H;
    section_kernels().height_curvature(held(E), places_, s, padded_layers(), lanes, share, H.data());
    return H;
}

}  // namespace overbend::material
