// What a film's captions say, in the trade's words.

#pragma once

#include <string>

#include "render/film/timeline.h"

namespace overbend::render {

std::string caption(Passage passage, const StrokeFilm& stroke, const StrokeLook& look);

// Between two strokes; from and to: indices of the strokes before and after, -1: none.
std::string between_caption(Passage passage, const FilmJob& job, int from, int to, const Carry& carry);

}  // namespace overbend::render
