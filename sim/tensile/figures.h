// What a tensile test says of the metal.
//
//   Rp0.2  proof stress, see proof.h            ReH, ReL, Ae  see yield_point.h
//   Rm     greatest stress: top of the curve     Ag  plastic elongation at it; Agt with the elastic part
//   A      plastic elongation at the fracture; not known where the record ends before
//   r      width over thickness strain, both plastic and logarithmic, without change of volume; slope from 2
//          per cent, or a third of Ag where that is less, to Ag
//
// Units  MPa; elongations without unit.
// Source ISO 6892-1 for all but r, ISO 10113 for r: definitions from memory. The greatest load is often flat
//        and scatters: where ten points or more are within 2 in 1000 of it, or 4 deviations, Rm and Ag are
//        those of a cubic curve through them.

#pragma once

#include <optional>

#include "sim/tensile/modulus.h"
#include "sim/tensile/yield_point.h"

namespace overbend::tensile {

struct Figures {
    Figure slope;    // of the record's elastic part
    Figure modulus;  // of the card
    Figure proof;    // Rp0.2; with an upper yield: the stress there too
    std::optional<YieldPoint> yield_point;
    Figure strength;                   // Rm
    Figure uniform;                    // Ag
    Figure uniform_total;              // Agt
    bool neck_seen = false;            // the record goes past the greatest load; else Ag is what it reached
    std::optional<Figure> elongation;  // A
    std::optional<Figure> r_value;
    double scatter = 0.0;  // of the stress, one standard deviation, MPa
};

// record: as read; line: the slope that plastic strain is counted from; specimen: see specimen_record, with
// the card's modulus.
// Throws BadRecord: it ends before 0.2 per cent.
Figures find_figures(const Record& record, const Elastic& elastic, const Figure& line, const Record& specimen,
                     const Figure& modulus, bool fractured);

}  // namespace overbend::tensile
