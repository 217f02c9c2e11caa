// The finished profile laid over the drawing, and how far it is off.
//
// Mid-lines are compared. The finished one is turned and shifted for the least sum of squares of its flats'
// ends and middles. A point of the drawing is off by its distance from the finished mid-line; the strip's two
// ends are off by their distance from the drawing's ends.
//
// Units  mm.

#pragma once

#include <Eigen/Core>
#include <vector>

#include "scenes/files/case/case.h"
#include "scenes/job/run/drawing.h"
#include "sim/strip/strip_state.h"

namespace overbend::job {

// A place of the drawing's mid-line: in flat `flat`, or in bend `bend`; the other is -1.
struct ProfilePoint {
    Eigen::Vector2d drawn = Eigen::Vector2d::Zero();
    Eigen::Vector2d made = Eigen::Vector2d::Zero();  // the nearest of the finished mid-line
    int flat = -1, bend = -1;
    double along = 0.0;  // rad, the drawing's direction there
    double off = 0.0;
};

struct ProfileFit {
    std::vector<ProfilePoint> points;    // along the drawing, from its left end
    std::vector<Eigen::Vector2d> drawn;  // mid-lines, no chord further than a hundredth from its arc
    std::vector<Eigen::Vector2d> made;   // laid over the drawing
    ProfilePoint worst_on_flats, worst_in_bends;
    double greatest() const;
};

// The drawing's mid-line, and places on it: ends and middle of every flat, five places within every bend. Its
// left end lies at the origin, its first flat along +x. What belongs to the finished strip is left as it is.
std::vector<Eigen::Vector2d> drawing_line(const files::Case& c);
std::vector<ProfilePoint> drawing_points(const files::Case& c);

ProfileFit fit_profile(const files::Case& c, const Blank& blank, const strip::StripState& finished);

}  // namespace overbend::job
