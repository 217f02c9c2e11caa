// The strip's two surfaces: where a point of them is, and how it moves with the unknowns.
//
// A surface point of element e at xi in [-1, 1], N1 = (1 - xi)/2, N2 = (1 + xi)/2, theta = N1 th1 + N2 th2,
// n = (-sin theta, cos theta):
//   x = N1 r1 + N2 r2 + (L/8 (1 - xi^2) (th1 - th2) + N1 y1 + N2 y2) n
// The first bracketed term makes the mid-line an arc between its nodes, so that the surface is smooth. y1, y2
// are the surface's heights over the mid-line at the nodes, from the section as it is there,
//   y = +-t / (G + sqrt(G^2 -+ t k))        (upper sign: upper surface; see sim/material/section.h)
// with G and k the means of the two elements at the node.
//
// Shapes  a vector of 12: the unknowns x, y, theta of the nodes e - 1 ... e + 2, in that order.
// Units   mm, rad, N per mm of width.

#pragma once

#include <Eigen/Core>
#include <algorithm>
#include <cmath>
#include <vector>

#include "sim/strip/beam_element.h"
#include "sim/stroke/equations.h"

namespace overbend::stroke {

using Vec2 = Eigen::Vector2d;
using Vec12 = Eigen::Matrix<double, 12, 1>;
using Mat12 = Eigen::Matrix<double, 12, 12>;

// What the surfaces need to know of the strip.
struct SurfaceStrip {
    double thickness = 0.0;
    const std::vector<double>* length = nullptr;                // of elements
    const std::vector<strip::ElementStrain>* strain = nullptr;  // of elements, at the state that is evaluated
};

// The strain at a node: the mean of its elements'.
struct NodeStrain {
    double G = 1.0, k = 0.0;
    int left = 0, right = 0;  // its elements; the same one at the strip's ends
};
inline NodeStrain node_strain(const std::vector<strip::ElementStrain>& strain, int node) {
    NodeStrain s;
    s.left = std::max(0, node - 1);
    s.right = std::min(static_cast<int>(strain.size()) - 1, node);
    s.G = 0.5 * (strain[s.left].G + strain[s.right].G);
    s.k = 0.5 * (strain[s.left].k + strain[s.right].k);
    return s;
}

// Height of a surface over the mid-line, with its derivatives by stretch and curvature.
struct SurfaceHeight {
    double y = 0.0, y_G = 0.0, y_k = 0.0, y_GG = 0.0, y_Gk = 0.0, y_kk = 0.0;
};
inline SurfaceHeight surface_height(double t, double side, double G, double k) {
    const double r = std::sqrt(std::max(1e-6, G * G - side * t * k)), D = G + r, rD = r * D;
    SurfaceHeight h;
    h.y = side * t / D;
    h.y_G = -side * t / rD;
    h.y_k = t * t / (2.0 * rD * D);
    h.y_GG = side * t / (r * r * r);
    h.y_Gk = -t * t * (G + 2.0 * r) / (2.0 * r * rD * rD);
    h.y_kk = side * t * t * t * (D + 2.0 * r) / (4.0 * rD * rD * rD);
    return h;
}

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
    p.height = p.bulge * (u[2] - u[5]) + p.N1 * y1 + p.N2 * y2;
    const double theta = p.N1 * u[2] + p.N2 * u[5];
    p.tx = std::cos(theta), p.ty = std::sin(theta);
    p.at = Vec2(p.N1 * u[0] + p.N2 * u[3] - p.height * p.ty, p.N1 * u[1] + p.N2 * u[4] + p.height * p.tx);
    return p;
}

// One surface of one element: heights at both nodes.
struct ElementFace {
    NodeStrain strain[2];
    SurfaceHeight height[2];
};
inline ElementFace element_face(const SurfaceStrip& strip, int element, double side) {
    ElementFace f;
    for (int i = 0; i < 2; ++i) {
        f.strain[i] = node_strain(*strip.strain, element + i);
        f.height[i] = surface_height(strip.thickness, side, f.strain[i].G, f.strain[i].k);
    }
    return f;
}

inline SurfacePoint surface_point(const SurfaceStrip& strip, const std::vector<double>& u, int element,
                                  const ElementFace& face, double xi) {
    return surface_point(&u[3 * element], (*strip.length)[element], face.height[0].y, face.height[1].y, xi);
}

// How a face's heights change with the unknowns.
struct FaceGradient {
    Vec12 dG[2], dk[2];  // of the node strains
    Vec12 dy[2];         // of the heights
};
FaceGradient face_gradient(const SurfaceStrip& strip, int element, const ElementFace& face);

// Adds Fn d2y of one node's height to the stiffness (node 0 or 1 of the element); the second variation of the
// stretch itself included.
void add_height_curvature(const SurfaceStrip& strip, int element, const ElementFace& face,
                          const FaceGradient& d, int node, double Fn, Mat12& K);

// How a surface point moves: along and across the section there.
struct PointGradient {
    Vec2 t = Vec2::UnitX(), n = Vec2::UnitY();  // the section's directions
    Vec12 along, across;
    Vec12 dtheta, dh;  // of the section's turn, and of the height
    // How far it moves in the direction v.
    Vec12 in(const Vec2& v) const { return v.dot(t) * along + v.dot(n) * across; }
};
PointGradient point_gradient(const SurfacePoint& s, const FaceGradient& d);

// Force of one point on the strip, and its derivative by the point's place.
struct PointForce {
    Vec2 force = Vec2::Zero();
    Eigen::Matrix2d by_place = Eigen::Matrix2d::Zero();
};

// Adds one point's force and stiffness to those of its surroundings: load += J^T f, K -= J^T df/dx J + f .
// d2x but for Fn d2y, which is added once an element.
void add_point(const SurfacePoint& s, const PointGradient& d, const PointForce& f, Vec12& load, Mat12& K);

// The surroundings' load and stiffness into the equations: gradient -= load, matrix += K. Nodes beyond the
// ends have no share.
void scatter(const SurfaceStrip& strip, int element, const Vec12& load, const Mat12& K, Equations& to);

}  // namespace overbend::stroke
