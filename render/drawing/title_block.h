// What frames a drawing: the border, the title block, table and notes.
//
// Units  mm on paper, y down.

#pragma once

#include <string>
#include <vector>

#include "render/drawing/drawing_sheet.h"

namespace overbend::drawing {

struct PaperSize {
    const char* name = "A4";
    int width = 0, height = 0;  // mm
};

picture::Rect frame_of(const PaperSize& paper);  // 20 mm at the left, for holes, else 10

// Where the view may stand: what border, title block, table and notes leave.
picture::Rect view_area(const PaperSize& paper, const DrawingSheet& sheet);

void paint_surroundings(picture::DrawingList& list, const PaperSize& paper, const DrawingSheet& sheet,
                        const std::string& scale);

}  // namespace overbend::drawing
