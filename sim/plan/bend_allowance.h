// Developed length of a bend by shop rules. These are estimates from tables, for a first blank
// and to compare with; what the strip really needs comes out of the simulated strokes.
//
// A bend allowance is the length of blank that goes into the bend, along its neutral fibre. A developed
// length is the blank of one bend with its two flanges.
//
// Units  mm, rad (bend angle: turned through, 0 is flat; the opening angle is pi less it).
// Source DIN 6935: the formulas for v and k as in Tabellenbuch Metall, page on cut lengths of bent parts.
//        Straight-line formulas: Machinery's Handbook, 31st edition, p. 1421, equations 32 to 34.
//
// Throws OutOfRange: inside_radius < 0; thickness <= 0; a bend angle outside 0 to pi; a k-factor outside 0 to
//        1; flange lengths too short for the bend.

#pragma once

#include "sim/material/card.h"

namespace overbend::plan {

// DIN's k: the neutral fibre lies k thickness / 2 from the inside. 0.65 + 0.5 log10(r/s), at least 0; 1 for
// r/s > 5.
double din_k(double inside_radius, double thickness);

// Bend allowance by DIN 6935: bend_angle (r + k s/2).
double din_allowance(double inside_radius, double thickness, double bend_angle);

// DIN's compensation v, positive where the blank is shorter than both legs together. A bend of less than 15
// deg has none.
double din_compensation(double inside_radius, double thickness, double bend_angle);

// What a bend takes of a leg that is measured on the outside, as DIN 6935 does: to the outer tangent, r + s,
// for a bend angle of 90 deg and more; to the outer corner, (r + s) tan(bend_angle / 2), for less.
double outer_corner(double inside_radius, double thickness, double bend_angle);

// Developed length by DIN 6935: both legs less v. The legs are measured on the outside: to the outer tangent
// for a bend angle of 90 deg and more, to the outer corner for less.
double din_developed(double leg, double other_leg, double inside_radius, double thickness, double bend_angle);

// How hard the strip is, in the handbook's three classes.
using material::Hardness;

// Bend allowance by the handbook's straight line: (c s + 1.57 r) bend_angle / (pi/2), c = 0.55, 0.64, 0.71.
double handbook_allowance(double inside_radius, double thickness, double bend_angle, Hardness hardness);

// Bend allowance with the neutral fibre k_factor thicknesses from the inside: bend_angle (r + k_factor s).
double k_factor_allowance(double inside_radius, double thickness, double bend_angle, double k_factor);

}  // namespace overbend::plan
