// A record made fit to be read: what does not belong to the pull is left out and said.
//
//   compression as pull   a record with all stresses below 0 is turned over
//   points out of place   single ones far from both neighbours are left out
//   very many points      more than 8000 are gathered to means of neighbours
//   unloading loops       points at which the strain is behind what it has been are left out, beyond yield
//   after the fracture    the record ends where the stress falls by a quarter between two points, or to less
//                         than a third of the greatest
//   extensometer off      the record ends where the strain stands still while the load changes, past the
//                         greatest load; before it the record is refused
//
// Refused (BadRecord): fewer than 20 points; no load; load that stands at its greatest value for a twentieth
// of the record while it was rising steeply (the load cell's limit); strain that runs back while the load
// stands, before the greatest load (the extensometer slipped); strain that does not grow.
//
// The limits are common practice, no source.

#pragma once

#include <string>
#include <vector>

#include "sim/tensile/record.h"

namespace overbend::tensile {

constexpr std::size_t fewest_points = 20;
constexpr std::size_t dense = 8000;

struct Mended {
    Record record;
    bool fractured = false;         // it ends with the fracture of the specimen
    std::vector<std::string> said;  // sentences on what was done
};

Mended mend(const Record& raw);

}  // namespace overbend::tensile
