// Pure bending of a strip: moment, and the curvature that remains after unloading.
//
// One section of unit width, in plane strain unless told otherwise, no axial force. Every layer is followed
// through loading and unloading, so the remaining curvature is a result; no springback formula is used.
//
// Here a curvature is 2 / (inner radius + outer radius) of the strip as it is, positive closes the upper
// side.
//
// Units   mm, MPa; curvature 1/mm; moment N mm per mm width; strains logarithmic.
// Source  kinematics and equilibrium: see section.h.

#pragma once

#include <vector>

#include "sim/material/card.h"

namespace overbend::material {

struct BendingPoint {
    double curvature = 0.0;            // as asked for
    double moment = 0.0;               // under load
    double free_curvature = 0.0;       // after unloading from here as a trial
    double thickness = 0.0;            // under load
    double neutral_height = 0.0;       // reference height of the layer without stretch, mm from the mid-line
    double inner_log_strain = 0.0;     // at the concave surface
    double outer_log_strain = 0.0;     // at the convex surface
    double axial_force_residue = 0.0;  // N per mm width, what is left of N = 0; for audits
    double stretch = 1.0;  // of the mid-line, and its curvature over the flat strip's length, under
    double reference_curvature = 0.0;    // load (see section.h); 1/mm
    std::vector<double> stress;          // hoop, of each layer from the lower surface up, under load, MPa
    std::vector<double> plastic_strain;  // accumulated equivalent
};

// Bends a flat, stress-free strip to each curvature in turn, and unloads from each as a trial: the strip that
// is bent on to the next curvature is the loaded one.
//
// thickness   mm, > 0
// curvatures  1/mm, |curvature| thickness < 1.9 (past 2 the inner surface folds)
// layers      3 to 64
// hold        of the width, 0 to 1, see layer_law.h
//
// Throws  OutOfRange: a value out of its range. NotSolved: no stretch balances the axial force; the message
//         gives the curvature.
std::vector<BendingPoint> bend_in_pure_moment(const Card& card, double thickness,
                                              const std::vector<double>& curvatures, int layers,
                                              double hold = 1.0);

}  // namespace overbend::material
