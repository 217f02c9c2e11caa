#include "sim/stroke/self_contact.h"

#include <algorithm>
#include <cmath>

namespace overbend::stroke {

namespace {

// Parts nearer than this along the strip, in thicknesses, do not touch: a strip folded flat on itself has an
// arc of 1.57 between its faces.
constexpr double apart = 1.2;

// How far from parallel two faces may be: the cosine of the angle between their outward normals.
constexpr double opposed = -0.3;

// The point of a surface that is nearest to another point.
struct Foot {
    SurfacePoint at;
    Vec2 tangent = Vec2::UnitX();  // of the surface, unit
    Vec2 normal = Vec2::UnitY();   // outward, unit
    double gap = 1e300;
    double aside = 0.0;  // how far the point lies past the element's end, along the tangent
};

// A surface's point with its derivative by xi.
Vec2 slope_at(const ContactScene& scene, const std::vector<double>& u, int element, const ElementFace& face,
              const SurfacePoint& s, double xi) {
    const double *a = &u[strip::node_unknowns * element], *b = a + strip::node_unknowns;
    const double bulge_slope = -0.25 * (*scene.length)[element] * xi * (a[2] - b[2]);
    const double rise = bulge_slope + 0.5 * (face.height[1] - face.height[0]);
    const double turn = 0.5 * (b[2] - a[2]);
    const Vec2 t(s.tx, s.ty), n(-s.ty, s.tx);
    return Vec2(0.5 * (b[0] - a[0]), 0.5 * (b[1] - a[1])) + rise * n - s.height * turn * t;
}

Foot foot_on(const ContactScene& scene, const std::vector<double>& u, int element, double side,
             const Vec2& point) {
    const ElementFace face = element_face(scene, element, side);
    double xi = 0.0;
    Foot foot;
    Vec2 slope;
    for (int i = 0; i < 6; ++i) {
        foot.at = surface_point(scene, u, element, face, xi);
        slope = slope_at(scene, u, element, face, foot.at, xi);
        const double step = (point - foot.at.at).dot(slope) / slope.squaredNorm();
        const double next = std::clamp(xi + step, -1.0, 1.0);
        if (std::abs(next - xi) < 1e-13) break;
        xi = next;
    }
    foot.tangent = slope.normalized();
    foot.normal = side * Vec2(-foot.tangent.y(), foot.tangent.x());
    foot.gap = (point - foot.at.at).dot(foot.normal);
    foot.aside = std::abs((point - foot.at.at).dot(foot.tangent));
    return foot;
}

// The nearest foot on some elements; -1 where the point lies beside all of them.
int nearest_of(const ContactScene& scene, const std::vector<double>& u, const SelfContactSet& set,
               const SelfPoint& p, const Vec2& at, Foot& foot) {
    int best = -1;
    double least = 1e300;
    for (int i = p.first; i < p.first + p.count; ++i) {
        const Foot f = foot_on(scene, u, set.others[i], p.side, at);
        if (f.aside > 1e-3 * scene.thickness) continue;
        const double away = (at - f.at.at).norm();
        if (away < least) least = away, best = set.others[i], foot = f;
    }
    return best;
}

// Force and stiffness of one surface point that is pushed with f.
struct Side {
    int element = 0;
    ElementFace face;
    PointGradient moves;
    HeightGradient heights;
    FaceSum sum;

    Side(const ContactScene& scene, int of, double side, const SurfacePoint& s, const Vec2& f)
        : element(of),
          face(element_face(scene, of, side)),
          moves(point_gradient(s)),
          heights(height_gradient(scene, of, face)) {
        PointForce force;
        force.force = f;
        add_point(s, moves, force, sum);
    }
};

}  // namespace

void find_self_contacts(const ContactScene& scene, const std::vector<double>& u, double reach,
                        SelfContactSet& set) {
    set.points.clear();
    set.others.clear();
    const int count = scene.last_element - scene.first_element + 1;
    if (count < 2) return;
    std::vector<double> along(count, 0.0);  // of the elements' middles
    for (int i = 1; i < count; ++i)
        along[i] = along[i - 1] + 0.5 * ((*scene.length)[scene.first_element + i - 1] +
                                         (*scene.length)[scene.first_element + i]);
    for (const double side : {1.0, -1.0}) {
        std::vector<SurfacePoint> middle;
        for (int i = 0; i < count; ++i) {
            const int e = scene.first_element + i;
            middle.push_back(surface_point(scene, u, e, element_face(scene, e, side), 0.0));
        }
        for (int i = 0; i < count; ++i) {
            const int e = scene.first_element + i;
            const double length = (*scene.length)[e];
            const int first = static_cast<int>(set.others.size());
            for (int j = 0; j < count; ++j) {
                if (std::abs(along[i] - along[j]) < apart * scene.thickness) continue;
                if (middle[i].tx * middle[j].tx + middle[i].ty * middle[j].ty > opposed) continue;
                const double near = reach + 0.6 * (length + (*scene.length)[scene.first_element + j]);
                if ((middle[i].at - middle[j].at).norm() < near)
                    set.others.push_back(scene.first_element + j);
            }
            const int found = static_cast<int>(set.others.size()) - first;
            if (found == 0) continue;
            const int points = std::max(
                1, static_cast<int>(std::ceil(length / (2.0 * scene.law.spacing * scene.thickness) - 1e-9)));
            for (int k = 0; k < points; ++k)
                set.points.push_back(
                    {e, side, (2.0 * k + 1.0) / points - 1.0, 0.5 * length / points, first, found});
        }
    }
}

double add_self_contacts(const ContactScene& scene, const std::vector<double>& u, SelfContactSet& set,
                         Equations& to) {
    set.far.clear();
    ContactLaw law = scene.law;
    law.stiffness *= 0.5;
    double energy = 0.0;
    for (const SelfPoint& p : set.points) {
        const SurfacePoint s =
            surface_point(scene, u, p.element, element_face(scene, p.element, p.side), p.xi);
        Foot foot;
        const int other = nearest_of(scene, u, set, p, s.at, foot);
        if (other < 0 || foot.gap >= law.soft || foot.gap < -0.5 * scene.thickness) continue;
        const Pressure pressure = pressure_at(law, foot.gap);
        const double P = p.weight * pressure.value, stiff = -p.weight * pressure.slope;
        energy += p.weight * pressure.energy;

        Side own(scene, p.element, p.side, s, P * foot.normal);
        Side others(scene, other, p.side, foot.at, -P * foot.normal);
        const Vec8 closing = own.moves.in(foot.normal), giving = others.moves.in(foot.normal);
        const Vec8 sliding = own.moves.in(foot.tangent), slid = others.moves.in(foot.tangent);
        // The normal turns with the other face: d normal = - side tangent dtheta.
        const Vec8 turn = P * p.side * others.moves.dtheta;
        own.sum.K += stiff * closing * closing.transpose();
        others.sum.K += stiff * giving * giving.transpose();
        others.sum.K -= slid * turn.transpose() + turn * slid.transpose();
        scatter(scene, p.element, own.face, own.heights, own.sum, to);
        scatter(scene, other, others.face, others.heights, others.sum, to);

        const Mat8 coupling = -stiff * closing * giving.transpose() + sliding * turn.transpose();
        const AroundMatrix far = spread_out(coupling, own.heights, others.heights);
        set.far.push_back({p.element, other, far});
        set.far.push_back({other, p.element, far.transpose()});
    }
    return energy;
}

}  // namespace overbend::stroke
