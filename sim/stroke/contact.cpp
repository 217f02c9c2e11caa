#include "sim/stroke/contact.h"

#include <algorithm>
#include <cmath>

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

PointForce point_force(const ContactLaw& law, const tool::Nearest& near, const Vec2& moved, double scale,
                       ContactPoint& point, ContactSum& sum) {
    PointForce f;
    const Pressure p = pressure_at(law, near.distance);
    const double P = point.weight * p.value, P_gap = point.weight * p.slope;
    const Vec2 n = near.normal, t(n.y(), -n.x());
    const double slip = t.dot(moved);
    const double root = std::sqrt(slip * slip + scale * scale);
    const double T = -law.friction * P * slip / root;

    f.force = P * n + T * t;
    // In the directions n and t: dn = c t dt, dt = - c n dt, with c the distance's curvature.
    const double c = near.curvature;
    const double T_slip = -law.friction * P * scale * scale / (root * root * root);
    const double tt = P * c + T_slip * (1.0 - c * n.dot(moved));
    const double tn = -law.friction * slip / root * P_gap;
    f.by_place = P_gap * n * n.transpose() - T * c * n * t.transpose() + tn * t * n.transpose() +
                 tt * t * t.transpose();

    sum.energy += point.weight * p.energy;
    sum.friction += law.friction * point.lagged_force * (root - scale);
    point.slip = slip;
    point.normal_force = P;
    point.friction_force = T;
    point.force = f.force;
    return f;
}

// What the points of a group sum up to, over the unknowns around their element.
struct Surroundings {
    Vec12 load, column, row;  // column and row: shared with the tool's spring
    Mat12 K;
    void clear() {
        load.setZero(), column.setZero(), row.setZero();
        K.setZero();
    }
};

// What the group shares with its tool's spring. Nodes beyond the ends have no share.
void scatter_to_spring(const SurfaceStrip& strip, int element, const Surroundings& sum, int spring,
                       Border& border) {
    const int nodes = static_cast<int>(strip.length->size()) + 1, shift = 3 * (element - 1);
    const int from = element == 0 ? 3 : 0, to = element + 2 >= nodes ? 9 : 12;
    for (int i = from; i < to; ++i) {
        border.column[spring][shift + i] += sum.column(i);
        border.row[spring][shift + i] += sum.row(i);
    }
}

// What a point's force does to the spring behind the tool.
void add_to_spring(const ToolStand& stand, const PointGradient& d, const PointForce& f, Surroundings& sum,
                   Equations& to) {
    const Vec2 by_column = f.by_place * stand.gives, by_row = f.by_place.transpose() * stand.gives;
    to.gradient[to.of_spring(stand.spring)] += f.force.dot(stand.gives);
    to.border.corner(stand.spring, stand.spring) -= stand.gives.dot(by_column);
    sum.column += d.in(by_column);
    sum.row += d.in(by_row);
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

void find_contacts(const ContactScene& scene, const std::vector<double>& u, const ToolStands& stands,
                   double reach, ContactSet& set) {
    set.groups_used = 0;
    set.points.clear();
    for (int k = 0; k < static_cast<int>(scene.tools->size()); ++k) {
        const tool::RigidTool& t = (*scene.tools)[k];
        const Vec2 place = stands[k].at;
        for (int e = scene.first_element; e <= scene.last_element; ++e) {
            const double length = (*scene.length)[e];
            const double near = reach + 0.6 * length;
            const Vec2 middle(0.5 * (u[3 * e] + u[3 * e + 3]), 0.5 * (u[3 * e + 1] + u[3 * e + 4]));
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
                g.first = static_cast<int>(set.points.size());
                g.count = std::max(
                    1, static_cast<int>(std::ceil(length / (scene.law.spacing * scene.thickness) - 1e-9)));
                for (int i = 0; i < g.count; ++i) {
                    ContactPoint p;
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
                        double slip_scale, ContactSet& set, Equations& to) {
    ContactSum total;
    Surroundings sum;
    FaceGradient d;
    for (int k = 0; k < set.groups_used; ++k) {
        const ContactGroup& g = set.groups[k];
        const tool::RigidTool& t = (*scene.tools)[g.tool];
        const ToolStand& stand = stands[g.tool];
        const ElementFace face = element_face(scene, g.element, g.side);
        bool touched = false;
        double Fn[2] = {0.0, 0.0};
        for (int i = g.first; i < g.first + g.count; ++i) {
            ContactPoint& p = set.points[i];
            const SurfacePoint s = surface_point(scene, u, g.element, face, p.xi);
            const tool::Nearest near = tool::nearest(t.outline, g.pieces, s.at - stand.at);
            p.place = s.at;
            p.normal_force = p.friction_force = p.slip = 0.0;
            p.force.setZero();
            if (near.distance >= scene.law.soft) continue;
            if (!touched) {
                touched = true;
                sum.clear();
                d = face_gradient(scene, g.element, face);
            }
            const PointForce f =
                point_force(scene.law, near, s.at - p.start - stand.moved, slip_scale, p, total);
            const PointGradient moves = point_gradient(s, d);
            add_point(s, moves, f, sum.load, sum.K);
            if (stand.spring >= 0) add_to_spring(stand, moves, f, sum, to);
            const double across = f.force.dot(moves.n);
            Fn[0] += s.N1 * across, Fn[1] += s.N2 * across;
        }
        if (!touched) continue;
        for (int i = 0; i < 2; ++i) add_height_curvature(scene, g.element, face, d, i, Fn[i], sum.K);
        scatter(scene, g.element, sum.load, sum.K, to);
        if (stand.spring >= 0) scatter_to_spring(scene, g.element, sum, stand.spring, to.border);
    }
    return total;
}

double lag_friction(ContactSet& set, const ContactLaw& law, double slip_scale) {
    double energy = 0.0;
    for (ContactPoint& p : set.points) {
        p.lagged_force = p.normal_force;
        energy += law.friction * p.lagged_force * (std::hypot(p.slip, slip_scale) - slip_scale);
    }
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
