// The parts of a film's frames: cards at either end, captions, and what is between two strokes.
//
// Between strokes tools are removed and fitted, the part unloaded and loaded. What hangs on the ram goes up
// out of the picture and comes down from there; what stands on the bed goes down and comes up; the gauge
// slides. A side of which no tool is changed stays.
//
// Units  mm, press coordinates.

#pragma once

#include <string>

#include "render/film/timeline.h"

namespace overbend::film {

// Part of the change from which the new tools come.
constexpr double new_tools_from = 0.5;

// Which sides of the press get other tools.
struct ToolChange {
    bool upper = false;  // punch, holder, ram, a clamp on the ram
    bool lower = false;  // die, pad, clamp in the frame, die holder, bed
    bool any() const { return upper || lower; }
};

// before: none at the beginning of a film, when all tools are brought in.
ToolChange tool_change(const ShownStroke* before, const ShownStroke& after);

// What is seen while the part is turned: all of it, all the way. The looks' views and carries must be there.
picture::View turning_view(const ShownJob& job, const FrameList& frames, int from, int to);

// A frame between two strokes. instant: one of those passages.
picture::DrawingList draw_between(const ShownJob& job, const FilmOptions& options, const FrameList& frames,
                                  const Instant& instant);

// What the stage of a frame needs in every phase.
picture::StageInfo stage_info(const ShownJob& job, const FilmOptions& options, const FrameList& frames,
                              int stroke, const Instant& instant);

// Title, material, strip, strokes and bends, the finished part, and the safety notes.
picture::DrawingList draw_title_card(const ShownJob& job, const FilmOptions& options);

// The finished part, its bends numbered, a table of their angles, as drawn and as made, and what was found
// about the job, the gravest first. job.finished must be there.
picture::DrawingList draw_finished_card(const ShownJob& job, const FilmOptions& options);

// Captions, in the trade's words; between two strokes with how the part gets from one to the other.
std::string caption(Passage passage, const ShownStroke& stroke, const StrokeLook& look);
// While the strip is in a tool, instead of the other: hits is not empty.
std::string hit_caption(const std::vector<picture::InterferenceMark>& hits);
std::string between_caption(const Instant& instant, const ShownJob& job, const Carry& carry);

}  // namespace overbend::film
