// Least inside radii by the tables of the trade: sharper bends are prone to crack on the outside.
//
// Sources by the card's metal
//   steel              DIN 6935:2011-10, table of least radii by tensile strength and thickness, to 640 MPa
//                      and 20 mm. Read in the edition of 1975-10, as reproduced at
//                      scribd.com/document/74375167; that the newer one kept the table is from memory. Bend
//                      lines along the rolling direction, and bend angles above 120 degrees: the next
//                      thicker column.
//                      From 1200 MPa, hardened and tempered strip: 5 thicknesses across, 8 along the rolling
//                      direction; common practice, no source.
//   stainless-1.4310   r/t by strength, thickness and direction, 1150 to 1900 MPa and 0.05 to 1 mm: a
//                      supplier's sheet quoting EN 10151:2002,
//                      thyssenkrupp-materials.co.uk/stainless-steel-301-14310.
//   aluminium-...      r/t by alloy, temper and thickness, 90 degrees: Aluminum Association's table of least
//                      radii as on bjg-design.com/designbook/shbend.htm, 1/64 to 1/2 in. Between two columns
//                      the thicker one is taken; of direction it says nothing.
//   stainless-annealed, stainless-hard, brass-soft, brass-hard
//                      r/t, soft and hard: Kalpakjian and Schmid, Manufacturing Engineering and Technology,
//                      table 16.3, from memory; nothing of direction or thickness.
// A hem is no bend of these tables: above 170 degrees there is no answer.
//
// Units  mm, MPa, rad.

#pragma once

#include <optional>
#include <string>

#include "sim/material/card.h"

namespace overbend::plan {

struct RadiusQuery {
    double thickness = 0.0;      // > 0
    double bend_angle = 0.0;     // rad, turned through, > 0
    bool along_rolling = false;  // the bend line, not the strip's length
};

struct LeastRadius {
    double radius = 0.0;  // mm
    std::string row;      // "Rm to 390 MPa, 1 to 1.5 mm"
    std::string source;
};

// Nothing where no table has the metal, or it ends before; `why_not` then says which.
std::optional<LeastRadius> least_radius(const material::Card& card, const RadiusQuery& query,
                                        std::string& why_not);

}  // namespace overbend::plan
