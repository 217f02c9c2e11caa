// What a film's captions say, in the trade's words.

#pragma once

#include <string>

#include "render/film/timeline.h"

namespace overbend::film {

std::string caption(Passage passage, const ShownStroke& stroke, const StrokeLook& look);

// Of an instant between two strokes. carry: how the part gets from one to the other.
std::string between_caption(const Instant& instant, const ShownJob& job, const Carry& carry);

}  // namespace overbend::film
