// Signed distance from a point to an outline, with what contact needs of it.
//
// Units  mm; curvature 1/mm.

#pragma once

#include <vector>

#include "sim/tool/arc_outline.h"

namespace overbend::tool {

struct Nearest {
    double distance = 0.0;        // > 0 outside the solid, < 0 inside
    Vec2 normal = Vec2::UnitY();  // gradient of the distance: away from the solid, unit length
    double curvature = 0.0;       // the hessian of the distance is curvature (I - normal normal^T);
                                  // > 0 about a convex arc or corner, < 0 within a concave arc, 0 at a line;
                                  // 1/mm, held to +-1e9 at a sharp corner's tip and at an arc's centre
    int piece = 0;                // index of the nearest piece
    Vec2 foot = Vec2::Zero();     // the nearest point on the outline
};

// Exact over all pieces. At a sharp corner the sign is that of the corner's bisector. Nothing is allocated,
// nothing is ever NaN: at a corner's tip (within 1e-9 mm) the normal is the bisector, at an arc's centre that
// of the arc's middle. The normal is continuous across smooth joints (see Joint), the curvature is not.
Nearest nearest(const ArcOutline& outline, const Vec2& point);

// The same over some of the pieces, for points known to be near them (see pieces_within); subset not empty.
// Where the nearest of all pieces is not among them, the distance is that to the subset and its sign may be
// wrong.
Nearest nearest(const ArcOutline& outline, const std::vector<int>& subset, const Vec2& point);

// Indices, in rising order, of the pieces that come within `reach` of the point. May be empty.
void pieces_within(const ArcOutline& outline, const Vec2& point, double reach, std::vector<int>& found);

}  // namespace overbend::tool
