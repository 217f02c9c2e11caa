// The part as it is drawn, for a place on a page: its profile to scale, bends numbered, flats with their
// lengths.
//
// Units  mm, y up; picture pixels.

#pragma once

#include <vector>

#include "render/picture/shown_job.h"

namespace overbend::report {

// unit: size of the words.
void add_part(picture::DrawingList& list, const picture::Rect& box, const picture::ShownPart& part,
              double thickness, double unit);

// The blank with the bends' lines at their places and the numbers above, distances from the left end below
// where there is room: they stand in the table too. length, at: mm.
void add_blank(picture::DrawingList& list, const picture::Rect& box, double length,
               const std::vector<double>& at, double unit);

}  // namespace overbend::report
