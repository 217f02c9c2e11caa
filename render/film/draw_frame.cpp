// One moment of a film as a drawing list.

#include <algorithm>
#include <cmath>

#include "render/film/timeline.h"
#include "sim/errors.h"

namespace overbend::render {

namespace {

constexpr double lifted_part = 0.06;   // of the stage's height, between the die and the carried strip
constexpr double dimmed = 0.4;         // opacity of the tools meanwhile
constexpr double dimming_part = 0.15;  // of the passage, at either end

StageInfo common_info(const FilmJob& job, const FilmOptions& options, const FrameList& frames, int stroke,
                      const Moment& moment) {
    StageInfo info;
    info.job_title = job.title;
    info.step_name = job.strokes[stroke].step_name;
    info.step_number = stroke + 1;
    info.step_count = static_cast<int>(job.strokes.size());
    info.caption = moment.caption;
    info.strip_width = job.strip_width;
    info.bends = frames.looks[stroke].bends;
    info.theme = options.theme;
    info.colouring = options.colouring;
    info.colour_limit = frames.colour_limit;
    info.arrows = options.arrows;
    return info;
}

// Angles are told when they have come to be.
void hide_what_is_to_come(Passage passage, std::vector<BendMark>& bends) {
    for (BendMark& bend : bends) {
        if (passage < Passage::dwell || passage == Passage::carry) bend.loaded.reset();
        if (passage != Passage::free) bend.free.reset();
    }
}

std::optional<double> clearance_at(const StrokeFilm& stroke, double at) {
    if (stroke.clearance.empty()) return {};
    const size_t before = static_cast<size_t>(std::floor(at));
    const size_t after = std::min(before + 1, stroke.clearance.size() - 1);
    if (at == std::floor(at)) return stroke.clearance[before];
    return std::min(stroke.clearance[before], stroke.clearance[after]);
}

std::vector<InterferenceMark> interferences_at(const StrokeFilm& stroke, double at) {
    std::vector<InterferenceMark> there;
    for (const TimedInterference& i : stroke.interferences)
        if (at >= i.first_state && (i.last_state < 0 || at <= i.last_state)) there.push_back(i.mark);
    return there;
}

bool same_tools(const tool::ToolSet& a, const tool::ToolSet& b) {
    if (a.size() != b.size()) return false;
    for (size_t i = 0; i < a.size(); ++i) {
        const tool::Box& p = a[i].outline.box();
        const tool::Box& q = b[i].outline.box();
        if (a[i].name != b[i].name || a[i].role != b[i].role ||
            std::abs(a[i].outline.area() - b[i].outline.area()) > 1e-9 || (p.low - q.low).norm() > 1e-9 ||
            (p.high - q.high).norm() > 1e-9)
            return false;
    }
    return true;
}

// Tools that stay are dimmed while the strip is carried; those that are changed fade out, and the new ones
// in.
double tool_opacity(double carried, bool tools_stay) {
    if (!tools_stay) return std::abs(1.0 - 2.0 * carried);
    const double part = std::min(1.0, std::min(carried, 1.0 - carried) / dimming_part);
    return 1.0 - (1.0 - dimmed) * eased(part);
}

// Off the die, whatever groove the strip lies in.
double lift(const stroke::Recording& recording, const View& view) {
    const std::vector<double>& y = recording.states.back().y;
    const double lowest = *std::min_element(y.begin(), y.end()) - 0.5 * recording.thickness;
    return std::max(0.0, -lowest) + lifted_part * view.height_mm();
}

DrawingList draw_carry(const FilmJob& job, const FilmOptions& options, const FrameList& frames,
                       const Moment& moment) {
    const StrokeFilm& before = job.strokes[moment.stroke];
    const StrokeFilm& after = job.strokes[moment.stroke + 1];
    const StrokeLook& from = frames.looks[moment.stroke];
    const StrokeLook& to = frames.looks[moment.stroke + 1];
    const bool first_half = moment.carried < 0.5;
    StageInfo info = common_info(job, options, frames, moment.stroke + 1, moment);
    hide_what_is_to_come(moment.passage, info.bends);
    const View view = between(from.view, to.view, eased((moment.carried - 0.3) / 0.5));
    info.motion = motion_at(from.carry, moment.carried, lift(*before.recording, view));
    info.punch_travel = first_half ? -from.raised : -to.raised;
    info.tools = first_half ? &before.recording->tools : &after.recording->tools;
    info.tool_opacity =
        tool_opacity(moment.carried, same_tools(before.recording->tools, after.recording->tools));
    return draw_stage(*before.recording, moment.at, info, options.size, view);
}

}  // namespace

DrawingList draw_frame(const FilmJob& job, const FilmOptions& options, const FrameList& frames, int index) {
    if (index < 0 || index >= static_cast<int>(frames.moments.size()))
        throw OutOfRange("frame", std::to_string(index),
                         "it must be between 0 and " + std::to_string(frames.moments.size() - 1));
    const Moment& moment = frames.moments[index];
    if (moment.passage == Passage::carry) return draw_carry(job, options, frames, moment);
    const StrokeFilm& stroke = job.strokes[moment.stroke];
    const StrokeLook& look = frames.looks[moment.stroke];
    StageInfo info = common_info(job, options, frames, moment.stroke, moment);
    hide_what_is_to_come(moment.passage, info.bends);
    info.punch_travel = moment.punch_travel;
    info.least_clearance = clearance_at(stroke, moment.at);
    info.interferences = interferences_at(stroke, moment.at);
    if (moment.passage >= Passage::retract) info.ghost = look.loaded_at;
    return draw_stage(*stroke.recording, moment.at, info, options.size, look.view);
}

}  // namespace overbend::render
