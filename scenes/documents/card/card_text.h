// The card of a coil, as a file that read_card reads: figures, the source and the uncertainty of each.

#pragma once

#include "scenes/documents/card/coil_report.h"

namespace overbend::documents {

// The numbers of a law in words: "K 520 MPa (515 to 525), n 0.2 (0.19 to 0.21)".
std::string law_numbers(const tensile::LawFit& fit);
// "315 +- 2", in so many decimals as its off has.
std::string with_off(const tensile::Figure& figure, double times = 1.0);

std::string card_text(const CoilReport& report);

// Of the record's coils: what they differ, half of it; 0.03 at least (common practice, no source: one coil
// along its length).
double coil_strength_range(const tensile::Coil& coil);

}  // namespace overbend::documents
