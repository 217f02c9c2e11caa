// Contact of the strip with itself: one of its surfaces folded on to another part of the same surface, as in
// a hem.
//
// Every point of either part is held off the other part's surface by the pressure of contact.h, over the
// distance along that surface's normal; each part counts for half. Without friction.
// The stiffness has two whole halves of the strip in it, so it is half of a tool's. It couples nodes that are
// far from one another along the strip: these blocks go beside the band matrix.
//
// Left out of the stiffness (not of the forces): the surfaces' own curvature where they touch, whose share is
// the pressure times the curvature over the contact's stiffness.
//
// Units  mm, MPa, N per mm of width.

#pragma once

#include <vector>

#include "sim/stroke/contact.h"
#include "sim/stroke/surface.h"

namespace overbend::stroke {

// A point that may touch one of some elements' surfaces.
struct SelfPoint {
    int element = 0;
    double side = 1.0, xi = 0.0;
    double weight = 0.0;       // mm of the mid-line, halved
    int first = 0, count = 0;  // of the elements that it may touch, in SelfContactSet::others
};

// What couples two parts of the strip: the unknowns of the nodes around `row_element` and `column_element`.
struct FarBlock {
    int row_element = 0, column_element = 0;
    AroundMatrix K = AroundMatrix::Zero();
};

struct SelfContactSet {
    std::vector<SelfPoint> points;
    std::vector<int> others;
    std::vector<FarBlock> far;  // of the last evaluation
};

// Collects the points of the forming zone that may touch within `reach`.
void find_self_contacts(const ContactScene& scene, const std::vector<double>& u, double reach,
                        SelfContactSet& set);

// A term of an increment's energy: sums over all points at u; set.far is rebuilt. Returns the energy, N.
double add_self_contacts(const ContactScene& scene, const std::vector<double>& u, SelfContactSet& set,
                         Equations& to);

}  // namespace overbend::stroke
