#include "render/picture/stage.h"

#include <algorithm>
#include <cmath>

#include "render/picture/angle_arc.h"
#include "render/picture/drawn_springback.h"
#include "render/picture/numbers.h"
#include "render/picture/stage_parts.h"
#include "sim/errors.h"

namespace overbend::picture {

namespace {

using stroke::Recording;
using stroke::State;

void check_info(const StageInfo& info) {
    if (!(info.strip_width > 0.0))
        throw OutOfRange("strip width", fixed(info.strip_width, 2) + " mm", "it must be above 0 mm");
    if (info.step_number < 1 || info.step_number > info.step_count)
        throw OutOfRange("step number",
                         std::to_string(info.step_number) + " of " + std::to_string(info.step_count),
                         "it must be between 1 and the count of steps");
    if (!(info.tool_opacity >= 0.0 && info.tool_opacity <= 1.0))
        throw OutOfRange("tool opacity", fixed(info.tool_opacity, 2), "it must be between 0 and 1");
    if (!(info.springback_scale >= 1.0 && info.springback_scale <= 20.0))
        throw OutOfRange("scale of springback", fixed(info.springback_scale, 2),
                         "it must be between 1 and 20");
}

std::vector<BendMark> with_reach(const Recording& recording, std::vector<BendMark> bends) {
    const std::vector<BendMark> given = bends;
    for (int i = 0; i < static_cast<int>(bends.size()); ++i)
        if (!(bends[i].reach > 0.0)) bends[i].reach = found_reach(recording, given, i);
    return bends;
}

// The information with what the caller left to be found.
StageInfo completed(const Recording& recording, const StageInfo& info) {
    StageInfo whole = info;
    if (!(whole.colour_limit > 0.0)) whole.colour_limit = colour_limit({&recording}, info.colouring);
    whole.bends = with_reach(recording, info.bends);
    return whole;
}

// The strip with its springback enlarged as asked. The middle between the stroke's bends stays in place.
State drawn_state(const Recording& recording, double instant, const StageInfo& info, const State& actual) {
    if (!info.ghost || info.springback_scale == 1.0 || instant <= *info.ghost) return actual;
    double low = recording.blank_position.front();
    double high = recording.blank_position.back();
    if (!info.bends.empty()) low = high = info.bends.front().blank_position;
    for (const BendMark& bend : info.bends) {
        low = std::min(low, bend.blank_position);
        high = std::max(high, bend.blank_position);
    }
    return with_larger_springback(recording, state_at(recording, *info.ghost), actual, info.springback_scale,
                                  0.5 * (low + high));
}

}  // namespace

double colour_limit(const std::vector<const Recording*>& recordings, Colouring colouring) {
    double greatest = 0.0;
    for (const Recording* recording : recordings)
        for (const State& s : recording->states)
            for (const float v : colouring == Colouring::hoop_stress ? s.hoop_stress : s.plastic_strain)
                if (std::isfinite(v)) greatest = std::max(greatest, std::abs(static_cast<double>(v)));
    return rounded_up(greatest);
}

State state_at(const Recording& recording, double instant) {
    const int last = static_cast<int>(recording.states.size()) - 1;
    if (!(instant >= 0.0 && instant <= last))
        throw OutOfRange("instant", fixed(instant, 3),
                         "it must be between 0 and " + std::to_string(last) + ", the last recorded state");
    const int before = std::min(static_cast<int>(instant), std::max(0, last - 1));
    const int after = std::min(before + 1, last);
    return blended(recording, recording.states[before], recording.states[after], instant - before);
}

View choose_view(const Recording& recording, const PictureSize& size, const StageInfo& info) {
    ViewOptions options;
    options.charts = info.charts;
    options.lens = info.lens;
    for (const BendMark& bend : info.bends) options.bend_lines.push_back(bend.blank_position);
    for (const InterferenceMark& hit : info.interferences) options.places.push_back(hit.at);
    View view = choose_view(recording, size, options);
    view.angles =
        place_angles(recording, view, lay_out(size, info.charts), with_reach(recording, info.bends));
    return view;
}

DrawingList draw_stage(const Recording& recording, double instant, const StageInfo& info,
                       const PictureSize& size, const View& view) {
    check_recording(recording);
    check_info(info);
    const Layout layout = lay_out(size, info.charts);
    const ThemeColours& colours = theme_colours(info.theme);
    const State actual = state_at(recording, instant);
    const StageInfo whole = completed(recording, info);
    const State drawn = drawn_state(recording, instant, whole, actual);

    const double opacity = info.backdrop == Backdrop::page ? 1.0 : 0.0;
    DrawingList list{"", size.width, size.height, with_opacity(colours.page, opacity)};
    Sheet sheet{recording, drawn, actual, instant, whole, layout, view, colours, list, {}, {}, {}};

    if (shows_lens(sheet)) sheet.taken = {view.lens->box, view.lens->key};
    keep_angles_clear(sheet);
    add_panels(sheet);
    add_tools(sheet);
    add_strip(sheet);
    add_ghost(sheet);
    add_ticks(sheet);
    add_angle_lines(sheet);
    add_lens_marker(sheet);
    add_arrows(sheet);
    add_interference_marks(sheet);
    add_tool_labels(sheet);
    add_scale(sheet);
    add_note(sheet);
    if (info.charts == Charts::hidden) add_legend(sheet);
    add_interference_words(sheet);
    add_lens(sheet);
    add_angle_words(sheet);
    add_tick_names(sheet);
    add_head_and_caption(sheet);
    add_readouts(sheet);
    add_curve(sheet);
    if (info.charts == Charts::shown) add_legend(sheet);
    return list;
}

DrawingList draw_stage(const Recording& recording, double instant, const StageInfo& info,
                       const PictureSize& size) {
    return draw_stage(recording, instant, info, size, choose_view(recording, size, info));
}

}  // namespace overbend::picture
