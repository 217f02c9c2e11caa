// Drawings as the files that people take away.

#pragma once

#include <filesystem>
#include <vector>

#include "scenes/documents/drawings/drawings.h"
#include "scenes/documents/report/report_files.h"

namespace overbend::commands {

enum class DrawingKinds { paper, paper_and_dxf };

// Each as NAME.svg and NAME.pdf, and NAME.dxf where it is asked for; all of them as drawings.pdf. Returns how
// many files there are. Throws as the painter.
int write_drawings(const std::vector<documents::Drawing>& drawings, const std::filesystem::path& folder,
                   DrawingKinds kinds);

// NAME.svg and NAME.pdf to the size of A4, NAME.png twice as fine. draw: to a height in pixels. Throws as the
// painter.
template <class Draw>
void write_sheet(const Draw& draw, const std::filesystem::path& folder, const std::string& name) {
    constexpr int page_height = 794;  // px of 0.75 pt: a sheet of A4 lying on its side
    documents::write_picture(draw(page_height), draw(2 * page_height), folder, name);
}

}  // namespace overbend::commands
