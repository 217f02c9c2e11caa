// A case and its job as the page that tells of them: what render/report lays out, filled with this job's
// words, figures and tables.

#pragma once

#include <string>
#include <vector>

#include "render/report/page.h"
#include "scenes/documents/drawings/drawings.h"
#include "scenes/job/run/flat_pattern.h"
#include "scenes/job/shop/shop.h"

namespace overbend::documents {

// pattern: of the whole job (pattern_of), every stroke solved and recorded; the page's strokes point into it.
// shop: of the same job (shop_report). drawings: of the same case (all_drawings), none: no section of them.
// generator: program and version, for the page's foot.
// Throws OutOfRange: a job without strokes, or with one that was not solved.
report::Page job_page(const files::Case& c, const job::FlatPattern& pattern, const job::ShopReport& shop,
                      const std::vector<Drawing>& drawings, const std::string& generator);

}  // namespace overbend::documents
