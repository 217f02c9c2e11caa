// The figures of a coil as JSON; keys: assets/manual/results.md.

#pragma once

#include <nlohmann/json_fwd.hpp>

#include "scenes/documents/card/coil_report.h"

namespace overbend::documents {

nlohmann::ordered_json coil_json(const CoilReport& report);

}  // namespace overbend::documents
