// Cards at either end of a film: what is bent of what, and the finished part with its angles.

#pragma once

#include "render/film/timeline.h"

namespace overbend::film {

// Title, material, strip, strokes and bends, the finished part, and the safety notes.
picture::DrawingList draw_title_card(const ShownJob& job, const FilmOptions& options);

// The finished part, its bends numbered, a table of their angles, as drawn and as made, and what was found
// about the job, the gravest first. job.finished must be there.
picture::DrawingList draw_finished_card(const ShownJob& job, const FilmOptions& options);

}  // namespace overbend::film
