// The strip as it is: where its nodes are and what its layers have been through. Plain data.
//
// Nodes and elements are numbered from the strip's left end as it now lies in the press (turning it round
// reverses them). Layers are numbered from the lower surface (towards -n) to the upper one.
// Units  mm, rad, MPa.
// Shapes n nodes, n - 1 elements, m layers; layer arrays hold element e's layer k at e * m + k.

#pragma once

#include <vector>

#include "sim/material/layer_law.h"
#include "sim/material/section_shape.h"

namespace overbend::strip {

struct StripState {
    double thickness = 0.0;              // of the blank, > 0
    std::vector<double> blank_position;  // n, of each node along the flat blank from the blank's left end;
                                         // falling when the strip is turned end for end
    std::vector<double> x, y, theta;     // n; theta is the turn of the section, 0 for a flat strip along +x
    std::vector<double> warp;            // n by warps: phi_j of each node (sim/material/section_shape.h)
    std::vector<double> layer_height;    // m, reference height of each layer, from -t/2 to t/2
    std::vector<double> layer_weight;    // m, Gauss weights; their sum is t
    std::vector<material::LayerHistory> history;  // n - 1 by m
    bool face_down = false;                       // the blank's upper face points down
    bool turned = false;                          // the blank's left end lies to the right

    int nodes() const { return static_cast<int>(x.size()); }
    int elements() const { return nodes() - 1; }
    int layers() const { return static_cast<int>(layer_height.size()); }
    // Reference length of element e, mm.
    double length(int e) const {
        const double d = blank_position[e + 1] - blank_position[e];
        return d < 0.0 ? -d : d;
    }
};

}  // namespace overbend::strip
