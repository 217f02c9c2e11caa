// Where the strip's nodes stand along the blank: fine where it will be bent, coarse where it stays straight.
//
// Units  mm.

#pragma once

#include <vector>

#include "sim/strip/strip_state.h"

namespace overbend::strip {

// A stretch of the blank that will be bent and pressed by tools.
struct FineZone {
    double centre = 0.0;  // blank position
    double core = 0.0;    // half length that is bent: elements of the finest size
    double reach =
        0.0;  // half length that tools may touch: elements of at most `touched` thicknesses; >= core
};

struct MeshOptions {
    double elements_per_thickness = 8.0;  // in the core, 1 to 16
    double touched = 0.5;  // largest element that a tool may touch, in thicknesses; scaled with the
                           // core's size when that is finer or coarser than 8 to a thickness
    double far = 6.0;      // largest element anywhere, in thicknesses
    double growth = 0.25;  // length gained by an element per length along the strip
};

// Blank positions from 0 to length. Symmetric zones give a symmetric mesh.
std::vector<double> mesh_blank(double length, double thickness, const std::vector<FineZone>& zones,
                               const MeshOptions& options);

// A flat, stress-free strip along +x from the origin, its mid-line at y = 0.
StripState flat_strip(double thickness, const std::vector<double>& blank_positions, int layers);

}  // namespace overbend::strip
