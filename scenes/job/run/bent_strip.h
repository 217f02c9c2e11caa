// A bent strip as curves over its blank: the turn of its sections and its two surfaces. What people measure
// on a part, radii and legs, is measured on these.
//
// Units  mm, rad. The strip is looked along from the blank's left end: "left" of that way is the upper side,
//        and a turn is positive where it bends to that side.

#pragma once

#include <Eigen/Core>
#include <vector>

#include "sim/strip/strip_state.h"
#include "sim/stroke/recording.h"

namespace overbend::job {

using Place = Eigen::Vector2d;

// Places that follow one another closely, straight lines between.
struct BentStrip {
    std::vector<double> blank;        // rising
    std::vector<double> turn;         // of the section
    std::vector<Place> upper, lower;  // points of the surfaces at the section's ends

    double length() const { return blank.back(); }
    double turn_at(double position) const;
    Place surface(double position, double side) const;  // side: +1 the upper one, -1 the lower one
    Place middle(double position) const;                // between the two surfaces
    double thickness(double position) const;
    // The side that a bend between two positions, from < to, has inside; of one that does not turn +1.
    double inner_side(double from, double to) const;
};

BentStrip bent_strip(const strip::StripState& strip);
BentStrip bent_strip(const stroke::Recording& recording, const stroke::State& state);

// Radius of the circle of least squares through points (Kasa's form: algebraic distances).
double fitted_radius(const std::vector<Place>& points);

// Of the bend between two positions on the flats beside it: the circle fitted to the inner surface where the
// mid-line turns over the middle `middle_turn` of the bend's turn, > 0. 0 for a bend that turns less.
double arc_radius(const BentStrip& strip, double from, double to, double thickness, double middle_turn);

// The inside radius, as a radius gauge or a circle laid into the bend reads it: the arc's over the middle 60
// degrees of turn, or two thirds of the bend where that is less. 0 for a bend of less than 3 degrees.
double inside_radius(const BentStrip& strip, double from, double to, double thickness);

}  // namespace overbend::job
