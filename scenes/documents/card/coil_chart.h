// The chart of a coil: records, laws, residuals, and what is beyond the record.

#pragma once

#include "render/chart/tensile_fit.h"
#include "scenes/documents/card/coil_report.h"

namespace overbend::documents {

chart::TensileFit coil_chart(const CoilReport& report);

}  // namespace overbend::documents
