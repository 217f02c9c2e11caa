// The sheets for the shop, filled from a case and its result.

#pragma once

#include <string>
#include <vector>

#include "render/report/sheet.h"
#include "scenes/files/case/case.h"
#include "scenes/job/run/process.h"

namespace overbend::documents {

// How the strip lies, in one cell: "upper face up, left end to the left".
std::string lying_words(const files::Step& step);

// How it gets there from the stroke before, or from the stack: a sentence for a person at the press.
std::string turning_words(const files::Step* before, const files::Step& step);

// The recordings are the result's: it must outlive the data. Strokes that were not solved are left out: the
// findings name them.
report::SheetData sheet_data(const files::Case& c, const job::JobResult& job);

}  // namespace overbend::documents
