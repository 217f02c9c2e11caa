// The sheets for the shop, filled from a case and its result.

#pragma once

#include <string>
#include <vector>

#include "render/report/sheet.h"
#include "scenes/case/case.h"
#include "scenes/process/process.h"

namespace overbend::scenes {

// How the strip lies, in one cell: "upper face up, left end to the left".
std::string lying_words(const Step& step);

// How it gets there from the stroke before, or from the stack: a sentence for a person at the press.
std::string turning_words(const Step* before, const Step& step);

// The recordings are the result's: it must outlive the data. Strokes that were not solved are left out: the
// findings name them.
render::SheetData sheet_data(const Case& c, const JobResult& job);

}  // namespace overbend::scenes
