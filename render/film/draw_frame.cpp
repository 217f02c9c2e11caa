// One instant of a film as a drawing list.

#include <algorithm>
#include <cmath>

#include "render/film/frame_parts.h"
#include "render/film/timeline.h"
#include "sim/errors.h"

namespace overbend::film {

using namespace picture;

namespace {

// Angles are shown once they are reached.
void hide_what_is_to_come(Passage passage, std::vector<BendMark>& bends) {
    for (BendMark& bend : bends) {
        if (passage < Passage::dwell || passage > Passage::away) bend.loaded.reset();
        if (passage != Passage::free && passage != Passage::away) bend.free.reset();
    }
}

}  // namespace

StageInfo stage_info(const ShownJob& job, const FilmOptions& options, const FrameList& frames, int stroke,
                     const Instant& instant) {
    StageInfo info;
    info.job_title = job.title;
    info.step_name = job.strokes[stroke].name;
    info.step_number = number_of(job, stroke);
    info.step_count = std::max(stroke_count(job), info.step_number);
    info.caption = instant.caption;
    info.strip_width = job.strip_width;
    info.bends = frames.looks[stroke].bends;
    info.theme = options.theme;
    info.colouring = options.colouring;
    info.colour_limit = frames.colour_limit;
    info.arrows = options.arrows;
    info.lens = options.lens;
    info.charts = options.charts;
    info.backdrop = options.backdrop;
    hide_what_is_to_come(instant.passage, info.bends);
    return info;
}

DrawingList draw_frame(const ShownJob& job, const FilmOptions& options, const FrameList& frames, int index) {
    if (index < 0 || index >= static_cast<int>(frames.instants.size()))
        throw OutOfRange("frame", std::to_string(index),
                         "it must be between 0 and " + std::to_string(frames.instants.size() - 1));
    return draw_instant(job, options, frames, frames.instants[index]);
}

Instant instant_at(const FrameList& frames, double index) {
    const int last = static_cast<int>(frames.instants.size()) - 1;
    const int before = std::clamp(static_cast<int>(std::floor(index)), 0, last);
    Instant instant = frames.instants[before];
    const Instant& after = frames.instants[std::min(before + 1, last)];
    const double part = std::clamp(index - before, 0.0, 1.0);
    if (after.passage != instant.passage || after.stroke != instant.stroke || after.from != instant.from)
        return instant;
    const auto blend = [&](double& value, double other) { value += part * (other - value); };
    blend(instant.at, after.at);
    blend(instant.part, after.part);
    blend(instant.springback_scale, after.springback_scale);
    if (instant.punch_travel && after.punch_travel) blend(*instant.punch_travel, *after.punch_travel);
    return instant;
}

DrawingList draw_instant(const ShownJob& job, const FilmOptions& options, const FrameList& frames,
                         const Instant& instant) {
    if (instant.passage == Passage::title) return draw_title_card(job, options);
    if (instant.passage == Passage::finished) return draw_finished_card(job, options);
    if (between_strokes(instant.passage)) return draw_between(job, options, frames, instant);
    const ShownStroke& stroke = job.strokes[instant.stroke];
    const StrokeLook& look = frames.looks[instant.stroke];
    StageInfo info = stage_info(job, options, frames, instant.stroke, instant);
    info.punch_travel = instant.punch_travel;
    info.least_clearance = clearance_at(stroke, instant.at);
    info.interferences = hits_at(stroke, instant.at);
    if (!info.interferences.empty()) info.caption = hit_caption(info.interferences);
    if (instant.passage >= Passage::retract) {
        info.ghost = look.loaded_at;
        info.springback_scale = instant.springback_scale;
    }
    return draw_stage(*stroke.recording, instant.at, info, options.size, look.view);
}

}  // namespace overbend::film
