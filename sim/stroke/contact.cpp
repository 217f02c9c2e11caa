#include "sim/stroke/contact.h"

#include <algorithm>
#include <cmath>

namespace overbend::stroke {

namespace {

using Vec12 = Eigen::Matrix<double, 12, 1>;
using Mat12 = Eigen::Matrix<double, 12, 12>;

// The strain at a node: the mean of its elements'.
struct NodeStrain {
    double G = 1.0, k = 0.0;
    int left = 0, right = 0;  // its elements; the same one at the strip's ends
};
NodeStrain node_strain(const std::vector<strip::ElementStrain>& strain, int node) {
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
SurfaceHeight surface_height(double t, double side, double G, double k) {
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

SurfacePoint surface_point(const double* u, double length, double y1, double y2, double xi) {
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
ElementFace element_face(const ContactScene& scene, int element, double side) {
    ElementFace f;
    for (int i = 0; i < 2; ++i) {
        f.strain[i] = node_strain(*scene.strain, element + i);
        f.height[i] = surface_height(scene.thickness, side, f.strain[i].G, f.strain[i].k);
    }
    return f;
}

SurfacePoint surface_point(const ContactScene& scene, const std::vector<double>& u, int element,
                           const ElementFace& face, double xi) {
    return surface_point(&u[3 * element], (*scene.length)[element], face.height[0].y, face.height[1].y, xi);
}

double distance_to_box(const tool::Box& box, const Vec2& p) {
    const double dx = std::max({box.low.x() - p.x(), 0.0, p.x() - box.high.x()});
    const double dy = std::max({box.low.y() - p.y(), 0.0, p.y() - box.high.y()});
    return std::hypot(dx, dy);
}

// Slips below this are not resolved as sliding, mm.
double slip_scale(double ram_move, double thickness) {
    return std::max(0.02 * std::abs(ram_move), 1e-6 * thickness);
}

ContactGroup& next_group(ContactSet& set) {
    if (set.groups_used == static_cast<int>(set.groups.size())) set.groups.emplace_back();
    return set.groups[set.groups_used++];
}

// Force of one point on the strip, and its derivative by the point's place.
struct PointForce {
    Vec2 force = Vec2::Zero();
    Eigen::Matrix2d by_place = Eigen::Matrix2d::Zero();
};

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

// How a face's heights change with the unknowns of the nodes element - 1 ... element + 2, in that order.
struct FaceGradient {
    Vec12 dG[2], dk[2];  // of the node strains
    Vec12 dy[2];         // of the heights
};
FaceGradient face_gradient(const ContactScene& scene, int element, const ElementFace& face) {
    FaceGradient d;
    for (int i = 0; i < 2; ++i) {
        d.dG[i].setZero();
        d.dk[i].setZero();
        for (const int e : {face.strain[i].left, face.strain[i].right}) {
            const strip::ElementStrain& s = (*scene.strain)[e];
            const double half = 0.5 / (*scene.length)[e];
            const int at = 3 * (e - element + 1);
            d.dG[i](at) -= half * s.tx, d.dG[i](at + 1) -= half * s.ty, d.dG[i](at + 2) += 0.25 * s.g;
            d.dG[i](at + 3) += half * s.tx, d.dG[i](at + 4) += half * s.ty, d.dG[i](at + 5) += 0.25 * s.g;
            d.dk[i](at + 2) -= half, d.dk[i](at + 5) += half;
        }
        d.dy[i] = face.height[i].y_G * d.dG[i] + face.height[i].y_k * d.dk[i];
    }
    return d;
}

// Adds Fn d2y of one node's height to the stiffness; the second variation of the stretch itself included.
void add_height_curvature(const ContactScene& scene, int element, const ElementFace& face,
                          const FaceGradient& d, int i, double Fn, Mat12& K) {
    const SurfaceHeight& h = face.height[i];
    K.noalias() -= Fn * h.y_GG * d.dG[i] * d.dG[i].transpose();
    K.noalias() -= Fn * h.y_kk * d.dk[i] * d.dk[i].transpose();
    const Mat12 cross = Fn * h.y_Gk * d.dG[i] * d.dk[i].transpose();
    K -= cross + cross.transpose();
    for (const int e : {face.strain[i].left, face.strain[i].right}) {
        const strip::ElementStrain& s = (*scene.strain)[e];
        const double share = 0.5 * Fn * h.y_G, length = (*scene.length)[e];
        const int at = 3 * (e - element + 1);
        // d2G = 2 (n . dd) dm - G dm^2, dm = (dth1 + dth2)/2, dd = (dr2 - dr1)/L.
        const double across[6] = {s.ty / length, -s.tx / length, 0.0, -s.ty / length, s.tx / length, 0.0};
        for (int a = 0; a < 6; ++a)
            for (const int m : {2, 5}) {
                K(at + a, at + m) -= 0.5 * share * across[a];
                K(at + m, at + a) -= 0.5 * share * across[a];
            }
        for (const int a : {2, 5})
            for (const int b : {2, 5}) K(at + a, at + b) += 0.25 * share * s.G;
    }
}

// Adds one point's force and stiffness to those of its element's surroundings:
// load += J^T f,  K -= J^T df/dx J + f . d2x.
void add_point(const SurfacePoint& s, const FaceGradient& d, const PointForce& f, Vec12& load, Mat12& K) {
    const Vec2 t(s.tx, s.ty), n(-s.ty, s.tx);
    const Vec12 dy = s.N1 * d.dy[0] + s.N2 * d.dy[1];
    Vec12 dtheta = Vec12::Zero(), dh = dy;
    dtheta(5) = s.N1, dtheta(8) = s.N2;
    dh(5) += s.bulge, dh(8) -= s.bulge;
    Vec12 along = -s.height * dtheta, across = dh;  // of the point, in the section's directions
    along(3) += s.N1 * t.x(), along(4) += s.N1 * t.y(), along(6) += s.N2 * t.x(), along(7) += s.N2 * t.y();
    across(3) += s.N1 * n.x(), across(4) += s.N1 * n.y(), across(6) += s.N2 * n.x(),
        across(7) += s.N2 * n.y();

    const double Ft = f.force.dot(t), Fn = f.force.dot(n);
    load.noalias() += Ft * along + Fn * across;
    // df/dx in the section's directions.
    const double D_tt = t.dot(f.by_place * t), D_tn = t.dot(f.by_place * n);
    const double D_nt = n.dot(f.by_place * t), D_nn = n.dot(f.by_place * n);
    const Vec12 row_t = D_tt * along + D_tn * across, row_n = D_nt * along + D_nn * across;
    K.noalias() -= along * row_t.transpose();
    K.noalias() -= across * row_n.transpose();
    // f . d2x = - 2 Ft dh dtheta - height Fn dtheta^2 (+ Fn d2y, added once an element).
    const Vec12 turn = Ft * dh + 0.5 * s.height * Fn * dtheta;
    K.noalias() += turn * dtheta.transpose();
    K.noalias() += dtheta * turn.transpose();
}

// The surroundings' load and stiffness into the strip's. Nodes beyond the ends have no share.
void scatter(int element, int nodes, const Vec12& load, const Mat12& K, std::vector<double>& gradient,
             BandMatrix& matrix) {
    const int from = element == 0 ? 3 : 0, to = element + 2 >= nodes ? 9 : 12, shift = 3 * (element - 1);
    matrix.join(shift + from, shift + to - 1);
    for (int i = from; i < to; ++i) {
        gradient[shift + i] -= load(i);
        for (int j = from; j < to; ++j) matrix.at(shift + i, shift + j) += K(i, j);
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

void find_contacts(const ContactScene& scene, const std::vector<double>& u, double travel, double reach,
                   ContactSet& set) {
    set.groups_used = 0;
    set.points.clear();
    for (int k = 0; k < static_cast<int>(scene.tools->size()); ++k) {
        const tool::RigidTool& t = (*scene.tools)[k];
        const Vec2 place = tool_position(t, travel);
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

ContactSum add_contacts(const ContactScene& scene, const std::vector<double>& u, double travel,
                        double ram_move, ContactSet& set, std::vector<double>& gradient, BandMatrix& matrix) {
    ContactSum sum;
    const double scale = slip_scale(ram_move, scene.thickness);
    const int nodes = static_cast<int>(u.size()) / 3;
    Vec12 load;
    Mat12 K;
    FaceGradient d;
    for (int k = 0; k < set.groups_used; ++k) {
        const ContactGroup& g = set.groups[k];
        const tool::RigidTool& t = (*scene.tools)[g.tool];
        const Vec2 place = tool_position(t, travel);
        const Vec2 tool_moved(0.0, t.moves_with_ram() ? -ram_move : 0.0);
        const ElementFace face = element_face(scene, g.element, g.side);
        bool touched = false;
        double Fn[2] = {0.0, 0.0};
        for (int i = g.first; i < g.first + g.count; ++i) {
            ContactPoint& p = set.points[i];
            const SurfacePoint s = surface_point(scene, u, g.element, face, p.xi);
            const tool::Nearest near = tool::nearest(t.outline, g.pieces, s.at - place);
            p.place = s.at;
            p.normal_force = p.friction_force = p.slip = 0.0;
            p.force.setZero();
            if (near.distance >= scene.law.soft) continue;
            if (!touched) {
                touched = true;
                load.setZero();
                K.setZero();
                d = face_gradient(scene, g.element, face);
            }
            const PointForce f = point_force(scene.law, near, s.at - p.start - tool_moved, scale, p, sum);
            add_point(s, d, f, load, K);
            const double across = f.force.dot(Vec2(-s.ty, s.tx));
            Fn[0] += s.N1 * across, Fn[1] += s.N2 * across;
        }
        if (!touched) continue;
        for (int i = 0; i < 2; ++i) add_height_curvature(scene, g.element, face, d, i, Fn[i], K);
        scatter(g.element, nodes, load, K, gradient, matrix);
    }
    return sum;
}

double lag_friction(ContactSet& set, const ContactLaw& law, double ram_move, double thickness) {
    const double scale = slip_scale(ram_move, thickness);
    double energy = 0.0;
    for (ContactPoint& p : set.points) {
        p.lagged_force = p.normal_force;
        energy += law.friction * p.lagged_force * (std::sqrt(p.slip * p.slip + scale * scale) - scale);
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

double least_gap(const ContactScene& scene, const std::vector<double>& u, double travel, tool::Role role) {
    double least = 1e300;
    for (const tool::RigidTool& t : *scene.tools) {
        if (t.role != role) continue;
        const Vec2 place = tool_position(t, travel);
        for (int e = scene.first_element; e <= scene.last_element; ++e) {
            const int count = std::max(
                1, static_cast<int>(std::ceil((*scene.length)[e] / (scene.law.spacing * scene.thickness))));
            for (const double side : {1.0, -1.0}) {
                const ElementFace face = element_face(scene, e, side);
                for (int i = 0; i < count; ++i) {
                    const double xi = (2.0 * i + 1.0) / count - 1.0;
                    const Vec2 at = surface_point(scene, u, e, face, xi).at - place;
                    if (distance_to_box(t.outline.box(), at) < least)
                        least = std::min(least, tool::nearest(t.outline, at).distance);
                }
            }
        }
    }
    return least;
}

}  // namespace overbend::stroke
