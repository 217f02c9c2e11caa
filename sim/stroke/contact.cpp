#include "sim/stroke/contact.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace overbend::stroke {

namespace {

double distance_to_box(const tool::Box& box, const Vec2& p) {
    const double dx = std::max({box.low.x() - p.x(), 0.0, p.x() - box.high.x()});
    const double dy = std::max({box.low.y() - p.y(), 0.0, p.y() - box.high.y()});
    return std::hypot(dx, dy);
}

ContactGroup& next_group(ContactSet& set) {
    if (set.groups_used == static_cast<int>(set.groups.size())) set.groups.emplace_back();
    return set.groups[set.groups_used++];
}

PointForce point_force(const ContactLaw& law, const tool::Nearest& near, const Vec2& moved,
                       ContactPoint& point, ContactSum& sum) {
    PointForce f;
    const Pressure p = pressure_at(law, near.distance);
    const double P = point.weight * p.value, P_gap = point.weight * p.slope;
    const Vec2 n = near.normal, t(n.y(), -n.x());
    point.slip = t.dot(moved);
    const Traction q = traction_at(law, point.held, point.slip, p.value);
    const double T = point.weight * q.value;

    f.force = P * n + T * t;
    // In the directions n and t: dn = c t dt, dt = - c n dt, with c the distance's curvature.
    const double c = near.curvature;
    const double tt = P * c + point.weight * q.by_slip * (1.0 - c * n.dot(moved));
    const double tn = q.by_pressure * P_gap;
    f.by_place = P_gap * n * n.transpose() - T * c * n * t.transpose() + tn * t * n.transpose() +
                 tt * t * t.transpose();

    sum.energy += point.weight * p.energy;
    sum.friction += point.weight * traction_at(law, point.held, point.slip, point.lagged_pressure).energy;
    point.normal_force = P;
    point.traction = q.value;
    point.force = f.force;
    return f;
}

// What a face shares with its tool's spring.
struct SpringShare {
    Vec8 column = Vec8::Zero(), row = Vec8::Zero();
};

void scatter_to_spring(const SurfaceStrip& strip, int element, const HeightGradient& heights,
                       const SpringShare& share, int spring, Border& border) {
    const AroundVector column = spread_out(share.column, heights), row = spread_out(share.row, heights);
    const AroundRange r = range_around(element, strip.elements());
    for (int i = r.from; i < r.to; ++i) {
        border.column[spring][r.shift + i] += column(i);
        border.row[spring][r.shift + i] += row(i);
    }
}

// What a point's force does to the spring behind the tool.
void add_to_spring(const ToolStand& stand, const PointGradient& d, const PointForce& f, SpringShare& share,
                   Equations& to) {
    const Vec2 by_column = f.by_place * stand.gives, by_row = f.by_place.transpose() * stand.gives;
    to.gradient[to.of_spring(stand.spring)] += f.force.dot(stand.gives);
    to.border.corner(stand.spring, stand.spring) -= stand.gives.dot(by_column);
    share.column += d.in(by_column);
    share.row += d.in(by_row);
}

// How far a point of a group has moved at most against the tool since it was looked at: as its nodes, as the
// surface's height over them, and as the section turns, whose arm is less than the thickness.
double moved_at_most(const ContactScene& scene, const std::vector<double>& u, const ContactGroup& g,
                     const ElementFace& face, const Vec2& tool_at) {
    const double* now = &u[strip::node_unknowns * g.element];
    double shift = 0.0, turn = 0.0, rise = 0.0;
    for (int node = 0; node < 2; ++node, now += strip::node_unknowns) {
        const double* seen = g.seen + 3 * node;
        shift = std::max(shift, std::abs(now[0] - seen[0]) + std::abs(now[1] - seen[1]));
        turn += std::abs(now[2] - seen[2]);
        rise = std::max(rise, std::abs(face.height[node] - g.seen_heights[node]));
    }
    return shift + (scene.thickness + 0.125 * (*scene.length)[g.element]) * turn + rise +
           (tool_at - g.tool_at).lpNorm<1>();
}

void note_clear(const std::vector<double>& u, const ElementFace& face, const Vec2& tool_at, double clear,
                ContactGroup& g) {
    g.clear = clear;
    g.tool_at = tool_at;
    for (int node = 0; node < 2; ++node) {
        std::copy_n(&u[strip::node_unknowns * (g.element + node)], 3, g.seen + 3 * node);
        g.seen_heights[node] = face.height[node];
    }
}

}  // namespace

Pressure pressure_at(const ContactLaw& law, double gap) {
    Pressure p;
    if (gap >= law.soft) return p;
    if (gap > -law.soft) {
        const double in = law.soft - gap;
        p.value = law.stiffness * in * in / (4.0 * law.soft);
        p.slope = -law.stiffness * in / (2.0 * law.soft);
        p.energy = law.stiffness * in * in * in / (12.0 * law.soft);
        return p;
    }
    p.value = -law.stiffness * gap;
    p.slope = -law.stiffness;
    p.energy = law.stiffness * (0.5 * gap * gap + law.soft * law.soft / 6.0);
    return p;
}

Traction traction_at(const ContactLaw& law, double held, double slip, double pressure) {
    constexpr double round = 0.1;
    Traction q;
    const double limit = law.friction * pressure;
    if (!(limit > 0.0)) return q;
    const double trial = held - law.stick * slip, x = std::abs(trial) / limit,
                 sense = trial < 0.0 ? -1.0 : 1.0;
    const double over = std::clamp(x - (1.0 - round), 0.0, 2.0 * round);  // into the rounded corner
    const double share = (x < 1.0 + round ? x : 1.0 + round) - over * over / (4.0 * round);
    const double slope = 1.0 - over / (2.0 * round);
    q.value = sense * limit * share;
    q.by_slip = -law.stick * slope;
    q.by_pressure = sense * law.friction * (share - (x < 1.0 + round ? x * slope : 0.0));
    const double inside = std::min(x, 1.0 + round);
    const double area =
        0.5 * inside * inside - over * over * over / (12.0 * round) + std::max(0.0, x - inside);
    q.energy = limit * limit / law.stick * area;
    return q;
}

void find_contacts(const ContactScene& scene, const std::vector<double>& u, const ToolStands& stands,
                   double reach, const std::vector<HeldGroup>& held, ContactSet& set) {
    set.groups_used = 0;
    set.points.clear();
    for (int k = 0; k < static_cast<int>(scene.tools->size()); ++k) {
        const tool::RigidTool& t = (*scene.tools)[k];
        const Vec2 place = stands[k].at;
        for (int e = scene.first_element; e <= scene.last_element; ++e) {
            const double length = (*scene.length)[e];
            const double near = reach + 0.6 * length;
            const double *left = &u[strip::node_unknowns * e], *right = left + strip::node_unknowns;
            const Vec2 middle(0.5 * (left[0] + right[0]), 0.5 * (left[1] + right[1]));
            if (distance_to_box(t.outline.box(), middle - place) > near + scene.thickness) continue;
            for (const double side : {1.0, -1.0}) {
                const ElementFace face = element_face(scene, e, side);
                const Vec2 local = surface_point(scene, u, e, face, 0.0).at - place;
                if (distance_to_box(t.outline.box(), local) > near) continue;
                ContactGroup& g = next_group(set);
                tool::pieces_within(t.outline, local, near, g.pieces);
                if (g.pieces.empty()) {
                    --set.groups_used;
                    continue;
                }
                g.element = e, g.tool = k, g.side = side;
                g.clear = 0.0;
                g.first = static_cast<int>(set.points.size());
                g.count = std::max(
                    1, static_cast<int>(std::ceil(length / (scene.law.spacing * scene.thickness) - 1e-9)));
                const auto memory = std::find_if(held.begin(), held.end(), [&](const HeldGroup& h) {
                    return h.tool == k && h.element == e && h.side == side;
                });
                for (int i = 0; i < g.count; ++i) {
                    ContactPoint p;
                    if (memory != held.end()) p.held = memory->traction[i];
                    p.xi = (2.0 * i + 1.0) / g.count - 1.0;
                    p.weight = length / g.count;
                    p.start = surface_point(scene, u, e, face, p.xi).at;
                    set.points.push_back(p);
                }
            }
        }
    }
}

ContactSum add_contacts(const ContactScene& scene, const std::vector<double>& u, const ToolStands& stands,
                        ContactSet& set, Equations& to) {
    ContactSum total;
    for (int k = 0; k < set.groups_used; ++k) {
        ContactGroup& g = set.groups[k];
        const tool::RigidTool& t = (*scene.tools)[g.tool];
        const ToolStand& stand = stands[g.tool];
        const ElementFace face = element_face(scene, g.element, g.side);
        if (g.clear > 0.0 && moved_at_most(scene, u, g, face, stand.at) < g.clear) continue;
        bool touched = false;
        double least = 1e300;
        FaceSum sum;
        SpringShare share;
        for (int i = g.first; i < g.first + g.count; ++i) {
            ContactPoint& p = set.points[i];
            const SurfacePoint s = surface_point(scene, u, g.element, face, p.xi);
            const tool::Nearest near = tool::nearest(t.outline, g.pieces, s.at - stand.at);
            least = std::min(least, near.distance);
            p.place = s.at;
            p.normal_force = p.traction = p.slip = 0.0;
            p.force.setZero();
            if (near.distance >= scene.law.soft) continue;
            touched = true;
            const PointForce f = point_force(scene.law, near, s.at - p.start - stand.moved, p, total);
            const PointGradient moves = point_gradient(s);
            add_point(s, moves, f, sum);
            if (stand.spring >= 0) add_to_spring(stand, moves, f, share, to);
        }
        note_clear(u, face, stand.at, least - scene.law.soft, g);
        if (!touched) continue;
        const HeightGradient heights = height_gradient(scene, g.element, face);
        scatter(scene, g.element, face, heights, sum, to);
        if (stand.spring >= 0) scatter_to_spring(scene, g.element, heights, share, stand.spring, to.border);
    }
    return total;
}

double lag_friction(ContactSet& set, const ContactLaw& law) {
    double energy = 0.0;
    for (ContactPoint& p : set.points) {
        p.lagged_pressure = p.normal_force / p.weight;
        energy += p.weight * traction_at(law, p.held, p.slip, p.lagged_pressure).energy;
    }
    return energy;
}

std::vector<HeldGroup> held_groups(const ContactSet& set) {
    std::vector<HeldGroup> held;
    for (int k = 0; k < set.groups_used; ++k) {
        const ContactGroup& g = set.groups[k];
        HeldGroup h{g.tool, g.element, g.side, {}};
        bool any = false;
        for (int i = g.first; i < g.first + g.count; ++i) {
            h.traction.push_back(set.points[i].traction);
            any = any || h.traction.back() != 0.0;
        }
        if (any) held.push_back(std::move(h));
    }
    return held;
}

double held_energy(const ContactSet& set, const ContactLaw& law) {
    double energy = 0.0;
    for (const ContactPoint& p : set.points) energy += 0.5 * p.weight * p.traction * p.traction / law.stick;
    return energy;
}

std::vector<ContactForce> contact_patches(const ContactSet& set, double reach) {
    struct Patch {
        ContactForce sum;
        double weight = 0.0;
        Vec2 last = Vec2::Zero();
    };
    std::vector<Patch> patches;
    for (int k = 0; k < set.groups_used; ++k) {
        const ContactGroup& g = set.groups[k];
        for (int i = g.first; i < g.first + g.count; ++i) {
            const ContactPoint& p = set.points[i];
            if (p.normal_force <= 0.0) continue;
            Patch* patch = nullptr;
            for (Patch& q : patches)
                if (q.sum.tool == g.tool && (q.last - p.place).norm() < reach) patch = &q;
            if (patch == nullptr) {
                patches.emplace_back();
                patch = &patches.back();
                patch->sum.tool = g.tool;
            }
            patch->sum.force += p.force;
            patch->sum.at += p.normal_force * p.place;
            patch->weight += p.normal_force;
            patch->last = p.place;
        }
    }
    std::vector<ContactForce> forces;
    for (const Patch& patch : patches) {
        forces.push_back(patch.sum);
        forces.back().at /= patch.weight;
    }
    return forces;
}

double least_gap(const ContactScene& scene, const std::vector<double>& u, const ToolStand& stand, int tool) {
    const tool::ArcOutline& outline = (*scene.tools)[tool].outline;
    double least = 1e300;
    for (int e = scene.first_element; e <= scene.last_element; ++e) {
        const int count = std::max(
            1, static_cast<int>(std::ceil((*scene.length)[e] / (scene.law.spacing * scene.thickness))));
        for (const double side : {1.0, -1.0}) {
            const ElementFace face = element_face(scene, e, side);
            for (int i = 0; i < count; ++i) {
                const double xi = (2.0 * i + 1.0) / count - 1.0;
                const Vec2 at = surface_point(scene, u, e, face, xi).at - stand.at;
                if (distance_to_box(outline.box(), at) < least)
                    least = std::min(least, tool::nearest(outline, at).distance);
            }
        }
    }
    return least;
}

}  // namespace overbend::stroke
