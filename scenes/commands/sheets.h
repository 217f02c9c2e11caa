// A drawing as the files that people take away: SVG and PDF to the size of A4, PNG twice as fine.

#pragma once

#include <filesystem>
#include <functional>
#include <string>

#include "render/picture/drawing_list.h"

namespace overbend::commands {

// draw: to a height in pixels. Writes NAME.svg, NAME.pdf and NAME.png. Throws as the painter.
void write_sheet(const std::function<picture::DrawingList(int height)>& draw,
                 const std::filesystem::path& folder, const std::string& name);

}  // namespace overbend::commands
