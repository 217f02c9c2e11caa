// Cost of a part over the batch size, as a chart.

#pragma once

#include "render/chart/cost_over_batch.h"
#include "scenes/job/shop/shop.h"

namespace overbend::documents {

// Batches of one part to a million: the case's own curve, with its title, and that of the alternative if
// there is one.
chart::CostOverBatch cost_over_batch_data(const files::Case& c, const job::ShopReport& shop);

}  // namespace overbend::documents
