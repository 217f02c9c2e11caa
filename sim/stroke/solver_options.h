// What a caller may change of the solver.

#pragma once

namespace overbend::stroke {

struct SolverOptions {
    double contact_stiffness = 2.0;  // over E'/t: that of half the thickness, from a surface to the mid-line
    double contact_spacing = 0.07;   // of contact points, over the thickness
    double length_scale = 0.12;      // l over the thickness
    double largest_increment = 0.1;  // of the ram, over the thickness
    // Largest change of an element's curvature in an increment, over 1/thickness: the moving neutral layer
    // leaves a history that coarser increments smear (0.3 per cent of the moment at 0.033, 1.5 at 0.13).
    double curvature_increment = 0.06;
};

}  // namespace overbend::stroke
