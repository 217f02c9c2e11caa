#include "sim/stroke/contact_step.h"

#include <algorithm>
#include <cmath>

namespace overbend::stroke {

namespace {

// A slope at the direction's end that is so much smaller than that at its start is as good as 0.
constexpr double small_slope = 0.2;

// Of the surface's heights at an element's nodes, in the direction.
Eigen::Vector2d height_change(const ContactScene& scene, const ContactGroup& g, const ElementFace& face,
                              const std::vector<double>& direction) {
    const HeightGradient heights = height_gradient(scene, g.element, face);
    const AroundRange r = range_around(g.element, scene.elements());
    Eigen::Vector2d change = Eigen::Vector2d::Zero();
    for (int i = r.from; i < r.to; ++i) change += direction[r.shift + i] * heights.row(i).transpose();
    return change;
}

}  // namespace

double ContactStep::slope_at(const ContactLaw& law, double slope, double share) const {
    double sum = slope * (1.0 - share);
    for (const Moving& m : moving_) {
        const double closer = share * m.closing, further = share * m.sliding;
        const double p = pressure_at(law, m.gap - closer).value, rise = -m.pressure.slope * closer;
        const double q = traction_at(law, m.held, m.slip + further, p).value;
        const Traction& was = m.traction;
        sum += m.weight * (m.closing * (p - m.pressure.value - rise) -
                           m.sliding * (q - was.value - was.by_slip * further - was.by_pressure * rise));
    }
    return sum;
}

// The points that touch somewhere along the direction.
void ContactStep::collect(const ContactScene& scene, const std::vector<double>& u,
                          const std::vector<double>& direction, const ToolStands& stands,
                          const ContactSet& set) {
    const std::size_t nodes = static_cast<std::size_t>(strip::node_unknowns) * (scene.elements() + 1);
    moving_.clear();
    ahead_.resize(u.size());
    for (std::size_t i = 0; i < u.size(); ++i) ahead_[i] = u[i] + direction[i];
    for (int k = 0; k < set.groups_used; ++k) {
        const ContactGroup& g = set.groups[k];
        const ToolStand& stand = stands[g.tool];
        const ElementFace face = element_face(scene, g.element, g.side);
        const Vec2 tool =
            stand.spring < 0 ? Vec2(0.0, 0.0) : Vec2(direction[nodes + stand.spring] * stand.gives);
        if (g.clear > 0.0 && moved_at_most(scene, ahead_, g, face, stand.at + tool) < g.clear) continue;
        const Eigen::Vector2d rise = height_change(scene, g, face, direction);
        const double *a = &direction[static_cast<std::size_t>(strip::node_unknowns) * g.element],
                     *b = a + strip::node_unknowns;
        for (int i = g.first; i < g.first + g.count; ++i) {
            const ContactPoint& p = set.points[i];
            const SurfacePoint s = surface_point(scene, u, g.element, face, p.xi);
            const Vec2 t(s.tx, s.ty), n(-s.ty, s.tx);
            const Vec2 move = s.N1 * Vec2(a[0], a[1]) + s.N2 * Vec2(b[0], b[1]) -
                              s.height * (s.N1 * a[2] + s.N2 * b[2]) * t +
                              (s.bulge * (a[2] - b[2]) + s.N1 * rise(0) + s.N2 * rise(1)) * n;
            // As it was looked at last, and how far it has come since.
            const double gap = p.gap + p.normal.dot((s.at - stand.at) - (p.place - g.tool_at));
            const double closing = p.normal.dot(tool - move);
            if (std::min(gap, gap - closing) >= scene.law.soft) continue;
            const Vec2 along(p.normal.y(), -p.normal.x());
            Moving m;
            m.weight = p.weight, m.closing = closing, m.sliding = along.dot(move - tool);
            m.gap = gap, m.slip = along.dot(s.at - p.start - stand.moved), m.held = p.held;
            m.pressure = pressure_at(scene.law, gap);
            m.traction = traction_at(scene.law, p.held, m.slip, m.pressure.value);
            moving_.push_back(m);
        }
    }
}

double ContactStep::share(const ContactScene& scene, const std::vector<double>& u,
                          const std::vector<double>& direction, const ToolStands& stands,
                          const ContactSet& set, double slope) {
    collect(scene, u, direction, stands, set);
    if (slope_at(scene.law, slope, 1.0) <= -small_slope * slope) return 1.0;
    double low = 0.0, high = 1.0;
    for (int i = 0; i < 40 && high - low > 0.02 * high; ++i) {
        const double middle = 0.5 * (low + high);
        (slope_at(scene.law, slope, middle) > 0.0 ? high : low) = middle;
    }
    return high;
}

}  // namespace overbend::stroke
