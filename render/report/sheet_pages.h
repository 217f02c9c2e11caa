// The two kinds of pages of the sheets; for sheet.cpp.

#pragma once

#include <string>

#include "render/report/paper.h"
#include "render/report/sheet.h"

namespace overbend::report {

void add_overview(Paper& paper, const picture::ShownJob& job);
// index: of the stroke.
void add_stroke(Paper& paper, const picture::ShownJob& job, int index);

}  // namespace overbend::report
