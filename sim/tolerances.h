// The one home of the solver's tolerances and limits, each with its unit and its reason. What a caller may
// change is in SolverOptions and StrokeOptions (sim/stroke).

#pragma once

namespace overbend::limits {

// Equilibrium: largest residual force, over (hoop yield stress x thickness); moments over that times
// thickness. A V stroke's force is some 0.1 of the scale, so this is 1e-5 of the force.
constexpr double residual = 1e-6;

// The same with gravity on, over the weight of a piece of strip as long as it is thick.
constexpr double weight_residual = 0.1;

// Newton iterations of an increment before it is cut.
constexpr int iterations = 30;

// Largest turn of a section in one Newton step, rad: beyond, the quadratic model of the energy means nothing.
constexpr double newton_turn = 0.25;

// Increment of the ram, over the thickness: first, and smallest before the stroke is given up.
constexpr double first_increment = 0.01;
constexpr double closing_increment = 0.001;  // to which it is cut while tools close on the strip
constexpr double smallest_increment = 1e-7;

// How much larger an increment may be than the one before it, pressing and on the way back: what changes
// from one to the next must be foreseen from the last.
constexpr double increment_growth = 1.5;
constexpr double way_back_growth = 2.0;

// Largest change of the punch force in an increment, over (hoop yield stress x thickness), as far as it can
// be foreseen: when a strip is clamped the force runs away, and the trapezoids of the balance of work with
// it. And that with which an increment is cut after it.
constexpr double force_increment = 0.06;
constexpr double force_jump = 0.24;

// Increment in which a strip jumps that has no equilibrium between two states, over the thickness.
constexpr double jump_increment = 1e-4;

// Work of one increment, over the largest work put in, that may be missing before the increment is cut.
constexpr double open_increment = 3e-3;
// That reference is no less than this, over (hoop yield stress x thickness^2): some first tenth of a bend.
constexpr double open_increment_work = 0.2;

// Largest fall of the punch force in an increment on the way back, over the force at the stop, as far as it
// can be foreseen; for the same reason.
constexpr double force_fall = 0.15;
// On a way back that only sets the estimate of the free angle right: some 1e-5 rad off.
constexpr double trial_force_fall = 0.3;
// Force, over the held one, at which a retracting punch is taken to be off the strip: the rest is elastic.
constexpr double force_left = 0.01;

// Residue of the balance of work, per cent: above the first a stroke is pressed again in finer increments,
// and what is left is a warning; above the second it is no result.
constexpr double open_balance = 1.0;
constexpr double lost_balance = 5.0;

// Work below which a strip is touched and not bent, over (hoop yield stress x thickness^2): some thousandth
// of a bend's.
constexpr double least_work = 1e-4;

// Contact: smooth start over the thickness; a penetration is some 1e-3 of it.
constexpr double contact_soft = 1e-3;

// Hold of the rigid modes near the tools, over E' / thickness: resists the move of an increment along and
// across the strip. Far from the tools it would load the swinging flanges.
constexpr double hold_along = 1e-7;
constexpr double hold_across = 1e-9;
constexpr double held_length = 60.0;  // the most that is held, over the thickness; less when the zone is less

// A strip that slides further in an increment than so many times the ram's move and so much of the thickness
// has jumped: the increment is cut, to see whether there is a way between.
constexpr double slip_over_ram = 2.0;
constexpr double slip_free = 0.005;

// Stiffness of the stops of pads and clamps, over E' (so N/mm per mm of width): some thousandth of a
// millimetre for the preload of a strong spring.
constexpr double spring_stop = 0.5;

// How far an element looks along the strip for what the length-scale term is weighed by, over the thickness:
// within the width of a hinge, and more than an element.
constexpr double length_scale_reach = 0.3;

// Curvature of the mid-line, over 1/thickness, past which a strip is no longer bent but necks at an edge:
// with no pull an inner radius of 0 is reached at about 1.2; at 3 the mid-line is stretched by three
// quarters.
constexpr double sharpest = 3.0;

// Stretch of the mid-line past which a strip is crushed and no longer bent: to a third of its thickness. The
// most ductile of sheet metals tear before.
constexpr double crushed = 3.0;

// How far from its stop's a free angle may stay where no nearer one is found, rad (a seventeenth of a
// degree): a sharp bend of hard strip springs back in one way or another from states that are nearly the
// same.
constexpr double angle_jump = 1e-3;

// Squeezed between two tools with this force, over (hoop yield stress x thickness), a strip would be indented
// rather than bent, and these mechanics have nothing more to say: a bend that is not made by then will not
// be.
constexpr double squeeze = 2.0;

// A stroke's force on the same scale past which a bend to an angle is given up: a hundred times air bending.
constexpr double force = 12.0;

// And past which every stroke is given up: flat faces 20 thicknesses broad that press the strip between them.
// Closed tools would crush it on for thousands of increments.
constexpr double closed_force = 40.0;

}  // namespace overbend::limits
