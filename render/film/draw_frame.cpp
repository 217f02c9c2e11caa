// One moment of a film as a drawing list.

#include <algorithm>
#include <cmath>

#include "render/film/cards.h"
#include "render/film/interlude.h"
#include "render/film/timeline.h"
#include "sim/errors.h"

namespace overbend::film {

namespace {

// Angles are told when they have come to be.
void hide_what_is_to_come(Passage passage, std::vector<picture::BendMark>& bends) {
    for (picture::BendMark& bend : bends) {
        if (passage < Passage::dwell || passage > Passage::away) bend.loaded.reset();
        if (passage != Passage::free && passage != Passage::away) bend.free.reset();
    }
}

std::optional<double> clearance_at(const StrokeFilm& stroke, double at) {
    if (stroke.clearance.empty()) return {};
    const size_t before = static_cast<size_t>(std::floor(at));
    const size_t after = std::min(before + 1, stroke.clearance.size() - 1);
    if (at == std::floor(at)) return stroke.clearance[before];
    return std::min(stroke.clearance[before], stroke.clearance[after]);
}

std::vector<picture::InterferenceMark> interferences_at(const StrokeFilm& stroke, double at) {
    std::vector<picture::InterferenceMark> there;
    for (const TimedInterference& i : stroke.interferences) {
        if (at < i.first_state || (i.last_state >= 0 && at > i.last_state)) continue;
        there.push_back(i.mark);
        const auto state = static_cast<std::size_t>(std::lround(at - i.first_state));
        if (state >= i.in_states.size()) continue;
        there.back().at = i.in_states[state].first;
        there.back().depth = i.in_states[state].second;
    }
    return there;
}

}  // namespace

picture::StageInfo stage_info(const FilmJob& job, const FilmOptions& options, const FrameList& frames,
                              int stroke, const Moment& moment) {
    picture::StageInfo info;
    const int shown = static_cast<int>(job.strokes.size());
    info.job_title = job.title;
    info.step_name = job.strokes[stroke].step_name;
    info.step_number = number_of(job, stroke);
    info.step_count = std::max(job.step_count > 0 ? job.step_count : shown, info.step_number);
    info.caption = moment.caption;
    info.strip_width = job.strip_width;
    info.bends = frames.looks[stroke].bends;
    info.theme = options.theme;
    info.colouring = options.colouring;
    info.colour_limit = frames.colour_limit;
    info.arrows = options.arrows;
    info.lens = options.lens;
    info.charts = options.charts;
    info.backdrop = options.backdrop;
    hide_what_is_to_come(moment.passage, info.bends);
    return info;
}

picture::DrawingList draw_frame(const FilmJob& job, const FilmOptions& options, const FrameList& frames,
                                int index) {
    if (index < 0 || index >= static_cast<int>(frames.moments.size()))
        throw OutOfRange("frame", std::to_string(index),
                         "it must be between 0 and " + std::to_string(frames.moments.size() - 1));
    return draw_moment(job, options, frames, frames.moments[index]);
}

Moment moment_at(const FrameList& frames, double index) {
    const int last = static_cast<int>(frames.moments.size()) - 1;
    const int before = std::clamp(static_cast<int>(std::floor(index)), 0, last);
    Moment moment = frames.moments[before];
    const Moment& after = frames.moments[std::min(before + 1, last)];
    const double part = std::clamp(index - before, 0.0, 1.0);
    if (after.passage != moment.passage || after.stroke != moment.stroke || after.from != moment.from)
        return moment;
    const auto blend = [&](double& value, double other) { value += part * (other - value); };
    blend(moment.at, after.at);
    blend(moment.part, after.part);
    blend(moment.springback_scale, after.springback_scale);
    if (moment.punch_travel && after.punch_travel) blend(*moment.punch_travel, *after.punch_travel);
    return moment;
}

picture::DrawingList draw_moment(const FilmJob& job, const FilmOptions& options, const FrameList& frames,
                                 const Moment& moment) {
    if (moment.passage == Passage::title) return draw_title_card(job, options);
    if (moment.passage == Passage::finished) return draw_finished_card(job, options);
    if (between_strokes(moment.passage)) return draw_between(job, options, frames, moment);
    const StrokeFilm& stroke = job.strokes[moment.stroke];
    const StrokeLook& look = frames.looks[moment.stroke];
    picture::StageInfo info = stage_info(job, options, frames, moment.stroke, moment);
    info.punch_travel = moment.punch_travel;
    info.least_clearance = clearance_at(stroke, moment.at);
    info.interferences = interferences_at(stroke, moment.at);
    if (moment.passage >= Passage::retract) {
        info.ghost = look.loaded_at;
        info.springback_scale = moment.springback_scale;
    }
    return picture::draw_stage(*stroke.recording, moment.at, info, options.size, look.view);
}

}  // namespace overbend::film
