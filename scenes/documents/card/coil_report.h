// A coil as it was read, with all that is said of it: what card, tables, JSON and chart are made from.

#pragma once

#include "scenes/files/tensile/read_record.h"
#include "scenes/job/coil/sample_bend.h"

namespace overbend::documents {

struct CoilReport {
    std::string title;
    std::vector<files::TensileRecord> records;  // as many as tests
    tensile::Coil coil;
    material::Card card;  // with the chosen law
    std::string like;     // the card that the other figures are from; empty: assumed by the family
    tensile::Law chosen = tensile::Law::swift;
    bool chosen_by_option = false;       // else by BIC
    double thickness = 1.0;              // mm, of the sample bend
    std::vector<job::SampleBend> bends;  // in the order of the fits; empty: left out
    std::vector<std::string> said;       // what was assumed and mended, in sentences
};

inline const tensile::LawFit& chosen_fit(const CoilReport& r) {
    return r.coil.fits[static_cast<std::size_t>(r.chosen)];
}

}  // namespace overbend::documents
