#include "sim/clearance/solid.h"
#include <algorithm>
#include <cmath>
namespace overbend::clearance {
Solid::Solid(const tool::ArcOutline& o, double sag) : points(tool::sample(o, std::max(sag, 0.05))), box(o.box()) {}
static double pd(const Vec2& p, const Vec2& a, const Vec2& b) { Vec2 d = b - a; double l = d.squaredNorm(); double t = l > 0 ? std::clamp((p - a).dot(d) / l, 0.0, 1.0) : 0; return (p - a - t * d).norm(); }
static double cr(const Vec2& a, const Vec2& b) { return a.x() * b.y() - a.y() * b.x(); }
static bool cross(const Vec2& a, const Vec2& b, const Vec2& c, const Vec2& d) { return cr(b - a, c - a) * cr(b - a, d - a) < 0 && cr(d - c, a - c) * cr(d - c, b - c) < 0; }
static bool inside(const std::vector<Vec2>& poly, const Vec2& p) { bool in = false; for (size_t i = 0, j = poly.size() - 1; i < poly.size(); j = i++) if ((poly[i].y() > p.y()) != (poly[j].y() > p.y()) && p.x() < (poly[j].x() - poly[i].x()) * (p.y() - poly[i].y()) / (poly[j].y() - poly[i].y()) + poly[i].x()) in = !in; return in; }
static double bdist(const std::vector<Vec2>& poly, const Vec2& p) { double m = 1e300; for (size_t i = 0, j = poly.size() - 1; i < poly.size(); j = i++) m = std::min(m, pd(p, poly[j], poly[i])); return m; }
static Gap between(const std::vector<Vec2>& S, const std::vector<Vec2>& C) {
    Gap g; bool over = false; double depth = 0;
    for (size_t i = 0, j = C.size() - 1; i < C.size(); j = i++) for (int k = 0; k < 20; ++k) { Vec2 p = C[j] + (C[i] - C[j]) * (k / 20.0); if (inside(S, p)) { over = true; double d = bdist(S, p); if (d > depth) depth = d, g.on_strip = p; } }
    for (auto& p : S) if (inside(C, p)) { over = true; double d = bdist(C, p); if (d > depth) depth = d, g.on_strip = p; }
    for (size_t i = 0, j = C.size() - 1; i < C.size(); j = i++) for (size_t k = 0, l = S.size() - 1; k < S.size(); l = k++) {
        if (cross(C[j], C[i], S[l], S[k])) over = true;
        double d = std::min(std::min(pd(C[i], S[l], S[k]), pd(S[k], C[j], C[i])), 1e300); if (!over && d < g.distance) g.distance = d, g.on_strip = C[i]; }
    if (over) g.distance = -depth;
    return g; }
Gap gap(const Solid& s, const Vec2& at, const Convex& piece, double within) {
    tool::Box b; b.low = b.high = piece.corners[0]; for (auto& c : piece.corners) b.low = b.low.cwiseMin(c), b.high = b.high.cwiseMax(c);
    Vec2 d = (s.box.low + at - b.high).cwiseMax(b.low - s.box.high - at).cwiseMax(Vec2::Zero()); if (d.norm() > within) return {};
    std::vector<Vec2> C; for (auto& c : piece.corners) C.push_back(c - at); Gap g = between(s.points, C); g.on_strip += at; if (g.distance > within) return {}; return g; }
double apart(const Convex& a, const Convex& b) { return between(a.corners, b.corners).distance; }
}
