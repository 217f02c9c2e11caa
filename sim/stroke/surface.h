// The strip's two surfaces: where a point of them is, and how it moves with the unknowns.
//
// A surface point of element e at xi in [-1, 1], N1 = (1 - xi)/2, N2 = (1 + xi)/2, theta = N1 th1 + N2 th2,
// n = (-sin theta, cos theta):
//   x = N1 r1 + N2 r2 + (L/8 (1 - xi^2) (th1 - th2) + N1 y1 + N2 y2) n
// The first bracketed term makes the mid-line an arc between its nodes, so that the surface is smooth. y1, y2
// are the surface's heights over the mid-line at the nodes, from the section as it is there
// (sim/material/section_shape.h): its G, k and gradients of the warp are the means of both elements'.
//
// Shapes  a vector of 8: x, y, theta of the element's nodes, then y1 and y2. What the heights do to the nodes
//         around comes in once a face (spread_out).
// Units   mm, rad, N per mm of width.

#pragma once

#include <Eigen/Core>
#include <algorithm>
#include <cmath>
#include <vector>

#include "sim/stroke/strip_strains.h"
#include "sim/stroke/surroundings.h"

namespace overbend::stroke {

using Vec2 = Eigen::Vector2d;
using Vec8 = Eigen::Matrix<double, 8, 1>;
using Mat8 = Eigen::Matrix<double, 8, 8>;

// What the surfaces need to know of the strip.
struct SurfaceStrip {
    double thickness = 0.0;
    const material::SectionShape* shape = nullptr;
    const std::vector<double>* length = nullptr;  // of elements
    const StripStrains* strains = nullptr;        // at the state that is evaluated
    int elements() const { return static_cast<int>(length->size()); }
};

// A surface point with what its derivatives need.
struct SurfacePoint {
    Vec2 at = Vec2::Zero();
    double N1 = 0.5, N2 = 0.5;
    double bulge = 0.0;   // L/8 (1 - xi^2)
    double height = 0.0;  // bracket of the header's formula
    double tx = 1.0, ty = 0.0;
};

inline SurfacePoint surface_point(const double* u, double length, double y1, double y2, double xi) {
    SurfacePoint p;
    p.N1 = 0.5 * (1.0 - xi), p.N2 = 0.5 * (1.0 + xi);
    p.bulge = 0.125 * length * (1.0 - xi * xi);
    const double* v = u + strip::node_unknowns;
    p.height = p.bulge * (u[2] - v[2]) + p.N1 * y1 + p.N2 * y2;
    const double theta = p.N1 * u[2] + p.N2 * v[2];
    p.tx = std::cos(theta), p.ty = std::sin(theta);
    p.at = Vec2(p.N1 * u[0] + p.N2 * v[0] - p.height * p.ty, p.N1 * u[1] + p.N2 * v[1] + p.height * p.tx);
    return p;
}

// One surface of one element.
struct ElementFace {
    double side = 1.0;              // +1 the upper surface, -1 the lower one
    double height[2] = {0.0, 0.0};  // at both nodes
};
ElementFace element_face(const SurfaceStrip& strip, int element, double side);

inline SurfacePoint surface_point(const SurfaceStrip& strip, const std::vector<double>& u, int element,
                                  const ElementFace& face, double xi) {
    return surface_point(&u[strip::node_unknowns * element], (*strip.length)[element], face.height[0],
                         face.height[1], xi);
}

// How a surface point moves: along and across the section there.
struct PointGradient {
    Vec2 t = Vec2::UnitX(), n = Vec2::UnitY();  // the section's directions
    Vec8 along, across;
    Vec8 dtheta, dh;  // of the section's turn, and of the height
    // How far it moves in the direction v.
    Vec8 in(const Vec2& v) const { return v.dot(t) * along + v.dot(n) * across; }
};
PointGradient point_gradient(const SurfacePoint& s);

// Force of one point on the strip, and its derivative by the point's place.
struct PointForce {
    Vec2 force = Vec2::Zero();
    Eigen::Matrix2d by_place = Eigen::Matrix2d::Zero();
};

// What the points of a face sum up to: the gradient of their energy is -load, its hessian K.
struct FaceSum {
    Vec8 load = Vec8::Zero();
    Mat8 K = Mat8::Zero();
};
// load += J^T f, K -= J^T df/dx J + f . d2x.
void add_point(const SurfacePoint& s, const PointGradient& d, const PointForce& f, FaceSum& sum);

// How a face's heights y1 and y2 change with the unknowns around the element.
using HeightGradient = Eigen::Matrix<double, around, 2>;
HeightGradient height_gradient(const SurfaceStrip& strip, int element, const ElementFace& face);

// From the eight to the unknowns around the element; of a matrix, its rows' and its columns'.
AroundVector spread_out(const Vec8& of_face, const HeightGradient& heights);
AroundMatrix spread_out(const Mat8& K, const HeightGradient& rows, const HeightGradient& columns);

// A face's sum into the equations.
void scatter(const SurfaceStrip& strip, int element, const ElementFace& face, const HeightGradient& heights,
             const FaceSum& sum, Equations& to);

}  // namespace overbend::stroke
