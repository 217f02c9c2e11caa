// The two kinds of pages of the sheets, and the drawings on the first; for sheet.cpp.
//
// Units  mm, y up; picture pixels. unit: size of the words.

#pragma once

#include <string>
#include <vector>

#include "render/picture/shown_job.h"
#include "render/report/paper.h"

namespace overbend::report {

void add_overview(Paper& paper, const picture::ShownJob& job);
// index: of the stroke.
void add_stroke(Paper& paper, const picture::ShownJob& job, int index);

// What angles may be off: " Angles, free: ±1°." or with the bends' names where they differ.
std::string allowed_words(const std::vector<picture::BendLine>& bends);

// What another coil may put them off: " Another coil of this grade: lip ±0.8°."
std::string coil_words(const std::vector<picture::BendLine>& bends);

// The part as it is drawn: its profile to scale, bends numbered, flats with their lengths.
void add_part(picture::DrawingList& list, const picture::Rect& box, const picture::ShownPart& part,
              double thickness, double unit);

// The blank with the bends' lines at their places and the numbers above, distances from the left end below
// where there is room: they stand in the table too. length, at: mm.
void add_blank(picture::DrawingList& list, const picture::Rect& box, double length,
               const std::vector<double>& at, double unit);

}  // namespace overbend::report
