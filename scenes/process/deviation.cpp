#include "scenes/process/deviation.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <vector>

#include "scenes/process/legs.h"

namespace overbend::scenes {

namespace {

using Vec2 = Eigen::Vector2d;

Vec2 towards(double angle) {
    return {std::cos(angle), std::sin(angle)};
}

// A drawn point, the finished one that it belongs to, and the direction in which they must meet.
struct Match {
    Vec2 drawn, made, normal;
};

void match_both_ways(std::vector<Match>& matches, const Vec2& drawn, const Vec2& made) {
    matches.push_back({drawn, made, Vec2::UnitX()});
    matches.push_back({drawn, made, Vec2::UnitY()});
}

// The drawing is walked from the origin along +x.
std::vector<Match> matches_of(const Case& c, const Blank& blank, const strip::StripState& s) {
    std::vector<Match> matches;
    Vec2 at = Vec2::Zero();
    double turn = 0.0;
    match_both_ways(matches, at, point_of(s, 0.0));
    for (std::size_t i = 0; i < c.part.flats.size(); ++i) {
        const FlatLine flat = flat_line(blank, s, static_cast<int>(i));
        const Vec2 normal(-flat.along.y(), flat.along.x());
        for (const double share : {0.0, 0.5, 1.0})
            matches.push_back({at + share * c.part.flats[i] * towards(turn), flat.at, normal});
        at += c.part.flats[i] * towards(turn);
        if (i >= c.part.bends.size()) continue;
        const Bend& bend = c.part.bends[i];
        const double radius = bend.inside_radius + 0.5 * c.thickness;
        if (is_doubled(bend))
            matches.push_back({at + radius * towards(turn),
                               furthest(blank, s, static_cast<int>(i), flat.along), flat.along});
        at += 2.0 * radius * std::sin(0.5 * std::abs(bend.angle)) * towards(turn + 0.5 * bend.angle);
        turn += bend.angle;
    }
    match_both_ways(matches, at, point_of(s, blank.length));
    return matches;
}

// Turns and shifts the drawn points; normals belong to the finished strip and stay.
void lay(std::vector<Match>& matches, double angle, const Vec2& shift) {
    const Eigen::Matrix2d turned = Eigen::Rotation2Dd(angle).toRotationMatrix();
    for (Match& m : matches) m.drawn = turned * m.drawn + shift;
}

// The turn and shift of least squares from point to point, to begin with.
void lay_roughly(std::vector<Match>& matches) {
    Vec2 drawn = Vec2::Zero(), made = Vec2::Zero();
    for (const Match& m : matches) drawn += m.drawn, made += m.made;
    drawn /= static_cast<double>(matches.size());
    made /= static_cast<double>(matches.size());
    double along = 0.0, across = 0.0;
    for (const Match& m : matches) {
        const Vec2 a = m.drawn - drawn, b = m.made - made;
        along += a.dot(b);
        across += a.x() * b.y() - a.y() * b.x();
    }
    const double turn = std::atan2(across, along);
    lay(matches, turn, made - Eigen::Rotation2Dd(turn) * drawn);
}

// One step of Gauss and Newton on the distances along the normals.
void lay_closer(std::vector<Match>& matches) {
    Eigen::Matrix3d square = Eigen::Matrix3d::Zero();
    Eigen::Vector3d right = Eigen::Vector3d::Zero();
    for (const Match& m : matches) {
        const Vec2 turning(-m.drawn.y(), m.drawn.x());
        const Eigen::Vector3d row(m.normal.dot(turning), m.normal.x(), m.normal.y());
        square += row * row.transpose();
        right += row * m.normal.dot(m.made - m.drawn);
    }
    const Eigen::Vector3d step = square.ldlt().solve(right);
    lay(matches, step[0], step.tail<2>());
}

}  // namespace

double profile_deviation(const Case& c, const Blank& blank, const strip::StripState& finished) {
    std::vector<Match> matches = matches_of(c, blank, as_drawn(finished));
    lay_roughly(matches);
    constexpr int steps = 20;  // each squares what is left of a turn of some hundredths
    for (int i = 0; i < steps; ++i) lay_closer(matches);
    double most = 0.0;
    for (const Match& m : matches) most = std::max(most, std::abs(m.normal.dot(m.made - m.drawn)));
    return most;
}

}  // namespace overbend::scenes
