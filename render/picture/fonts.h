// The pictures' own fonts, DejaVu Sans and its bold, loaded from the assets: nothing has to be installed, and
// no setting or other font of the machine has a say, so that words come out the same everywhere.

#pragma once

#include <pango/pango.h>

#include <filesystem>

namespace overbend::picture {

// A folder that holds the fonts, the first of: fonts in what the environment variable OVERBEND_ASSETS names;
// ../../assets/fonts from the executable (a build folder in the source tree); ../share/overbend/fonts from it
// (installed); the source tree that was compiled. Throws std::runtime_error when none of them has the fonts.
std::filesystem::path fonts_folder();

// For laying out words with these fonts alone, without hinting. One a thread; it lives as long as its thread.
// Throws std::runtime_error: see fonts_folder; a font that cannot be read.
PangoContext* font_context();

}  // namespace overbend::picture
