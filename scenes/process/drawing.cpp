#include "scenes/process/drawing.h"

#include <algorithm>
#include <cmath>

#include "sim/plan/bend_allowance.h"
#include "sim/strip/place.h"

namespace overbend::scenes {

double Blank::flat_middle(int i) const {
    const int bends = static_cast<int>(bend_line.size());
    const double from = i == 0 ? 0.0 : bend_line[i - 1] + half_arc[i - 1];
    const double to = i == bends ? length : bend_line[i] - half_arc[i];
    return 0.5 * (from + to);
}

Blank make_blank(const Case& c) {
    Blank blank;
    double at = 0.0;
    for (std::size_t i = 0; i < c.part.bends.size(); ++i) {
        const Bend& bend = c.part.bends[i];
        const double radius =
            std::max(bend.inside_radius, 0.05 * c.thickness);  // the formula has a logarithm
        const double half = 0.5 * plan::din_allowance(radius, c.thickness, std::abs(bend.angle));
        at += c.part.flats[i] + half;
        blank.bend_line.push_back(at);
        blank.half_arc.push_back(half);
        at += half;
    }
    blank.length = c.blank_length.value_or(at + c.part.flats.back());
    if (!c.bend_lines.empty()) blank.bend_line = c.bend_lines;
    return blank;
}

namespace {

// Ends and middles of the drawing's flats along its mid-line, walked from the origin along +x.
std::vector<Eigen::Vector2d> drawing_points(const Case& c) {
    std::vector<Eigen::Vector2d> points;
    Eigen::Vector2d at = Eigen::Vector2d::Zero();
    double turn = 0.0;
    for (std::size_t i = 0; i < c.part.flats.size(); ++i) {
        const Eigen::Vector2d along(std::cos(turn), std::sin(turn));
        for (const double share : {0.0, 0.5, 1.0}) points.push_back(at + share * c.part.flats[i] * along);
        at += c.part.flats[i] * along;
        if (i >= c.part.bends.size()) continue;
        const Bend& bend = c.part.bends[i];
        const double chord =
            2.0 * (bend.inside_radius + 0.5 * c.thickness) * std::sin(0.5 * std::abs(bend.angle));
        const double middle = turn + 0.5 * bend.angle;
        at += chord * Eigen::Vector2d(std::cos(middle), std::sin(middle));
        turn += bend.angle;
    }
    return points;
}

std::vector<Eigen::Vector2d> finished_points(const Case& c, const Blank& blank, const strip::StripState& s) {
    std::vector<Eigen::Vector2d> points;
    const int bends = static_cast<int>(blank.bend_line.size());
    for (int i = 0; i <= bends; ++i) {
        // From the flat's middle outwards, so that bends that came out sharper or rounder do not count twice.
        const double from = blank.flat_middle(i) - 0.5 * c.part.flats[i], to = from + c.part.flats[i];
        for (const double share : {0.0, 0.5, 1.0}) {
            const strip::MidPoint m =
                strip::mid_point(s, std::clamp(from + share * (to - from), 0.0, blank.length));
            points.emplace_back(m.x, m.y);
        }
    }
    return points;
}

}  // namespace

double profile_deviation(const Case& c, const Blank& blank, const strip::StripState& finished) {
    strip::StripState s = finished;
    if (s.face_down) strip::turn_over(s);
    if (s.turned) strip::turn_end_for_end(s);
    const std::vector<Eigen::Vector2d> drawn = drawing_points(c);
    std::vector<Eigen::Vector2d> made = finished_points(c, blank, s);

    // The turn and shift of least squares in the plane.
    Eigen::Vector2d drawn_mean = Eigen::Vector2d::Zero(), made_mean = Eigen::Vector2d::Zero();
    for (std::size_t i = 0; i < drawn.size(); ++i) drawn_mean += drawn[i], made_mean += made[i];
    drawn_mean /= static_cast<double>(drawn.size());
    made_mean /= static_cast<double>(made.size());
    double along = 0.0, across = 0.0;
    for (std::size_t i = 0; i < drawn.size(); ++i) {
        const Eigen::Vector2d a = made[i] - made_mean, b = drawn[i] - drawn_mean;
        along += a.dot(b);
        across += a.x() * b.y() - a.y() * b.x();
    }
    const double turn = std::atan2(across, along);
    double most = 0.0;
    for (std::size_t i = 0; i < drawn.size(); ++i) {
        const Eigen::Vector2d a = made[i] - made_mean;
        const Eigen::Vector2d laid(std::cos(turn) * a.x() - std::sin(turn) * a.y(),
                                   std::sin(turn) * a.x() + std::cos(turn) * a.y());
        most = std::max(most, (laid - (drawn[i] - drawn_mean)).norm());
    }
    return most;
}

}  // namespace overbend::scenes
