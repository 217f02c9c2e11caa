// Cards at either end of a film: what is bent of what, and the finished part with its angles.

#pragma once

#include "render/film/timeline.h"

namespace overbend::render {

// Title, material, strip, strokes and bends, the part as it will be, and what to mind at the press.
DrawingList draw_title_card(const FilmJob& job, const FilmOptions& options);

// The finished part, its bends numbered, and a table of their angles: as drawn and as made.
// job.finished must be there.
DrawingList draw_finished_card(const FilmJob& job, const FilmOptions& options);

}  // namespace overbend::render
