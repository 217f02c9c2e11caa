// Paints a drawing list with Cairo and Pango: to pixels, PNG, SVG and PDF. The one place that knows them.
//
// No display is needed. Lists may be painted in several threads at once; the same list gives the same bytes.
// Words are painted as outlines of DejaVu Sans without hinting, so they do not depend on the screen's
// settings. In a PDF they are text in the same font, which goes into the file, to be searched and read aloud.

#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

#include "render/picture/drawing_list.h"

namespace overbend::picture {

// What the fourth byte of a pixel says: nothing, or how much of the ground it covers.
enum class Alpha { unused, premultiplied };

// Pixels row by row, four bytes each: blue, green, red, alpha (as Cairo keeps them on a little-endian
// machine). With alpha the three colours are multiplied by it already.
struct Pixels {
    int width = 0;
    int height = 0;
    Alpha alpha = Alpha::unused;
    std::vector<std::uint8_t> bgra;
};

// With alpha where the list's background is not opaque.
// Throws OutOfRange: a picture without width or height. std::runtime_error: Cairo could not.
Pixels paint(const DrawingList& list);
// The same into pixels that are there already, which saves their allocation for every frame.
void paint(const DrawingList& list, Pixels& into);

std::string png_bytes(const Pixels& pixels);  // RGB, or RGBA where the pixels have alpha
// The list as an SVG document with its title. Names inside it are its own: several may stand in one page.
std::string svg_bytes(const DrawingList& list);
std::string pdf_bytes(const std::vector<DrawingList>& pages);

// Lists whose unit is a millimetre on paper, width and height too: SVG with its sizes and its viewBox in mm
// (coordinates on a grid of 1/256 mm), PDF pages of that size.
std::string svg_bytes_in_mm(const DrawingList& list);
std::string pdf_bytes_in_mm(const std::vector<DrawingList>& pages);

// Files are whole or absent (render/output/whole_file.h). Throws std::runtime_error with path and reason.
void write_png(const DrawingList& list, const std::filesystem::path& path);
void write_svg(const DrawingList& list, const std::filesystem::path& path);
void write_pdf(const DrawingList& list, const std::filesystem::path& path);  // 1 px is 0.75 pt
// A page a list, at least one; the title is the first one's.
void write_pdf(const std::vector<DrawingList>& pages, const std::filesystem::path& path);

// The box that a text really fills when it is painted, halo not counted. For tests.
Rect painted_box(const Text& text);

}  // namespace overbend::picture
