// The two kinds of pages of the sheets; for sheet.cpp.

#pragma once

#include <string>

#include "render/report/paper.h"
#include "render/report/sheet.h"

namespace overbend::report {

void add_overview(Paper& paper, const SheetData& data);
// index: of the stroke.
void add_stroke(Paper& paper, const SheetData& data, int index);

// "90.0°", signed.
std::string in_degrees(double angle);

}  // namespace overbend::report
