// Sheets for the shop, A4: the job on the first page, then one sheet a stroke with its tools, place, gauge,
// stop, what is to be expected, and boxes for what is measured. Nothing on them needs colour.

#pragma once

#include <vector>

#include "render/picture/shown_job.h"

namespace overbend::report {

// One page or more for the job, one or more for each stroke. Throws OutOfRange: no stroke or no bend, lists
// that do not fit one another, a stroke without a recording.
std::vector<picture::DrawingList> draw_sheets(const picture::ShownJob& job);

}  // namespace overbend::report
