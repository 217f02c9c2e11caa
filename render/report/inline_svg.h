// A drawing list as an SVG element that stands in a page: words stay words, so that they can be searched,
// copied and read out, and the element needs no names that another one in the page could have too.
//
// Words are set in the reader's font and held to the width that the picture was laid out for. (The painter's
// SVG has letters as outlines: the same everywhere, and ten times as long.)

#pragma once

#include <string>

#include "render/picture/drawing_list.h"

namespace overbend::report {

// label: what the picture shows, for those who do not see it.
std::string inline_svg(const picture::DrawingList& list, const std::string& label);

// A path as the `d` of an SVG, to a tenth of a pixel.
std::string svg_path(const picture::Path& path);

}  // namespace overbend::report
