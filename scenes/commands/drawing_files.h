// Workshop drawings as files.

#pragma once

#include <filesystem>
#include <vector>

#include "scenes/documents/drawings/drawings.h"

namespace overbend::commands {

enum class DrawingKinds { paper, paper_and_dxf };

// Each as NAME.svg and NAME.pdf, and NAME.dxf where it is asked for; all of them as drawings.pdf. Returns how
// many files there are. Throws as the painter.
int write_drawings(const std::vector<documents::Drawing>& drawings, const std::filesystem::path& folder,
                   DrawingKinds kinds);

}  // namespace overbend::commands
