// What a film's captions say, in the trade's words.

#pragma once

#include <string>

#include "render/film/timeline.h"

namespace overbend::render {

std::string caption(Passage passage, const StrokeFilm& stroke, const StrokeLook& look);

// While the strip is carried to its place for the next stroke.
std::string carry_caption(const StrokeFilm& next, const Carry& carry);

}  // namespace overbend::render
