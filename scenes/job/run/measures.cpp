#include "scenes/job/run/measures.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "scenes/job/run/legs.h"
#include "sim/plan/bend_allowance.h"
#include "sim/plan/general_tolerance.h"
#include "sim/units.h"

namespace overbend::job {

namespace {

constexpr double beyond_any = 1e300;  // no distance is greater

// ---- what legs, angles and radii could put the profile off by

// A size of the part changed, the legs left as they are.
void change(files::Part& part, double thickness, SizeKind what, int index, double by) {
    if (what == SizeKind::leg) return void(part.flats[index] += by);
    files::Bend& bend = part.bends[index];
    const auto corner = [&] {
        return plan::outer_corner(bend.inside_radius, thickness, std::abs(bend.angle));
    };
    const double before = corner();
    if (what == SizeKind::angle)
        bend.angle += bend.angle < 0.0 ? by : -by;  // opened: a hem cannot be closed further
    else
        bend.inside_radius += by;
    for (const int flat : {index, index + 1}) part.flats[flat] -= corner() - before;
}

// How far the places of a changed drawing lie from those of the drawing once it is turned and shifted onto
// them as fit_profile does it: across it, at its ends in any direction.
std::vector<double> distances(const std::vector<ProfilePoint>& drawn,
                              const std::vector<ProfilePoint>& changed) {
    const auto normal = [&](std::size_t i) {
        return Place(-std::sin(drawn[i].along), std::cos(drawn[i].along));
    };
    const auto along = [&](std::size_t i) {
        return Place(std::cos(drawn[i].along), std::sin(drawn[i].along));
    };
    const auto is_end = [&](std::size_t i) { return i == 0 || i + 1 == drawn.size(); };
    const auto row = [&](std::size_t i, const Place& way) {
        const Place& at = drawn[i].drawn;
        return Eigen::Vector3d(way.dot(Place(-at.y(), at.x())), way.x(), way.y());
    };
    Eigen::Matrix3d square = Eigen::Matrix3d::Zero();
    Eigen::Vector3d right = Eigen::Vector3d::Zero();
    const auto want = [&](std::size_t i, const Place& way) {
        const Eigen::Vector3d r = row(i, way);
        square += r * r.transpose();
        right -= r * way.dot(changed[i].drawn - drawn[i].drawn);
    };
    for (std::size_t i = 0; i < drawn.size(); ++i) {
        if (drawn[i].flat < 0) continue;
        want(i, normal(i));
        if (is_end(i)) want(i, along(i));
    }
    const Eigen::Vector3d motion = square.ldlt().solve(right);
    std::vector<double> found;
    for (std::size_t i = 0; i < drawn.size(); ++i) {
        const auto left = [&](const Place& way) {
            return way.dot(changed[i].drawn - drawn[i].drawn) + row(i, way).dot(motion);
        };
        found.push_back(is_end(i) ? std::hypot(left(normal(i)), left(along(i))) : std::abs(left(normal(i))));
    }
    return found;
}

MeasuredSize profile_measure(const files::Case& c, const ProfileFit& profile) {
    const std::vector<double> allowed = allowed_profile(c);
    std::size_t nearest = 0;
    const auto ratio = [&](std::size_t i) { return profile.points[i].off / allowed[i]; };
    for (std::size_t i = 1; i < allowed.size(); ++i)
        if (ratio(i) > ratio(nearest)) nearest = i;
    MeasuredSize m{SizeKind::profile, static_cast<int>(nearest), 0.0, profile.points[nearest].off,
                   allowed[nearest]};
    m.reference = m.allowed >= beyond_any;
    return m;
}

}  // namespace

bool MeasuredSize::within() const {
    constexpr double rounding = 1e-9;
    return reference || std::abs(off()) <= allowed + rounding;
}

std::string size_name(const files::Case& c, const MeasuredSize& m) {
    switch (m.what) {
        case SizeKind::angle:
            return "angle of '" + c.part.bends[m.index].name + "'";
        case SizeKind::leg:
            return "leg " + std::to_string(m.index + 1);
        case SizeKind::radius:
            return "inside radius of '" + c.part.bends[m.index].name + "'";
        case SizeKind::profile:
            break;
    }
    return "profile";
}

double allowed_angle(const files::Case& c, int bend) {
    if (const auto own = c.part.bends[bend].tolerance.either_way) return *own;
    if (c.part.angle_tolerance) return *c.part.angle_tolerance;
    const std::vector<double> legs = drawn_legs(c);
    return plan::angle_tolerance(std::min(legs[bend], legs[bend + 1]));
}

double allowed_leg(const files::Case& c, int flat) {
    if (const auto own = c.part.leg_tolerance(static_cast<std::size_t>(flat)).either_way) return *own;
    if (c.part.length_tolerance) return *c.part.length_tolerance;
    return plan::length_tolerance(std::clamp(drawn_legs(c)[flat], 0.5, 4000.0));
}

double allowed_radius(const files::Case& c, int bend) {
    const files::Bend& b = c.part.bends[bend];
    if (b.radius_tolerance.either_way) return *b.radius_tolerance.either_way;
    constexpr double least = 0.2, part_of_it = 0.15;
    return c.part.radius_tolerance.value_or(std::max(least, part_of_it * b.inside_radius));
}

std::vector<double> allowed_profile(const files::Case& c) {
    const std::vector<ProfilePoint> drawn = drawing_points(c);
    if (c.part.profile_tolerance) return std::vector<double>(drawn.size(), *c.part.profile_tolerance);
    std::vector<double> allowed(drawn.size(), 0.0);
    files::Case other = c;
    const auto add = [&](SizeKind what, int index, double tolerance, const files::Tolerance& own) {
        for (std::size_t i = 0; own.reference && i < drawn.size(); ++i)
            if (what != SizeKind::radius || drawn[i].bend == index) allowed[i] = beyond_any;
        if (own.reference) return;
        change(other.part, c.thickness, what, index, tolerance);
        const std::vector<double> off = distances(drawn, drawing_points(other));
        for (std::size_t i = 0; i < off.size(); ++i) allowed[i] += off[i];
        other.part = c.part;
    };
    for (int i = 0; i < static_cast<int>(c.part.flats.size()); ++i)
        add(SizeKind::leg, i, allowed_leg(c, i), c.part.leg_tolerance(static_cast<std::size_t>(i)));
    for (int b = 0; b < static_cast<int>(c.part.bends.size()); ++b) {
        add(SizeKind::angle, b, allowed_angle(c, b), c.part.bends[b].tolerance);
        add(SizeKind::radius, b, allowed_radius(c, b), c.part.bends[b].radius_tolerance);
    }
    return allowed;
}

std::vector<MeasuredSize> measure_part(const files::Case& c, const Blank& used, const BentStrip& finished,
                                       const std::vector<double>& angles, const ProfileFit& profile) {
    std::vector<MeasuredSize> measures;
    const int bends = static_cast<int>(c.part.bends.size());
    const std::vector<double> drawn = drawn_legs(c), made = made_legs(c, used, finished);
    for (int b = 0; b < bends; ++b) {
        const files::Bend& bend = c.part.bends[b];
        measures.push_back(
            {SizeKind::angle, b, bend.angle, angles[b], allowed_angle(c, b), bend.tolerance.reference});
    }
    for (int i = 0; i <= bends; ++i)
        measures.push_back({SizeKind::leg, i, drawn[i], made[i], allowed_leg(c, i),
                            c.part.leg_tolerance(static_cast<std::size_t>(i)).reference});
    for (int b = 0; b < bends; ++b) {
        const files::Bend& bend = c.part.bends[b];
        const double radius =
            inside_radius(finished, used.flat_middle(b), used.flat_middle(b + 1), c.thickness);
        // A bend that was not made has no radius; its angle says so.
        measures.push_back({SizeKind::radius, b, bend.inside_radius, radius, allowed_radius(c, b),
                            bend.radius_tolerance.reference || radius == 0.0});
    }
    measures.push_back(profile_measure(c, profile));
    return measures;
}

}  // namespace overbend::job
