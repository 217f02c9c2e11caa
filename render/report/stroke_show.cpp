#include "render/report/stroke_show.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "render/picture/view.h"

namespace overbend::render {

namespace {

using stroke::Phase;
using stroke::Recording;
using stroke::State;

// Seconds of the passages.
constexpr double placed_time = 0.6, approach_time = 0.9, press_time = 3.4, dwell_time = 0.7,
                 retract_time = 1.4, raising_time = 0.8, free_time = 1.4;
constexpr int eased_keys = 12;

double eased(double part) {
    return part * part * (3.0 - 2.0 * part);
}

double greatest_shift(const State& a, const State& b) {
    double greatest = 0.0;
    for (std::size_t i = 0; i < a.x.size(); ++i)
        greatest = std::max(greatest, std::hypot(b.x[i] - a.x[i], b.y[i] - a.y[i]));
    return greatest;
}

// States spread over a time by how far the punch and the strip move between them.
void add_states(const Recording& r, int first, int last, double time, double by_travel, double by_shift,
                std::vector<PaceKey>& keys) {
    std::vector<double> way{0.0};
    for (int i = first; i < last; ++i) {
        const State &a = r.states[i], &b = r.states[i + 1];
        way.push_back(way.back() + by_travel * std::abs(b.travel - a.travel) +
                      by_shift * greatest_shift(a, b) + 1e-9);
    }
    const double begin = keys.back().seconds;
    for (int i = first + 1; i <= last; ++i)
        keys.push_back(
            {begin + time * way[i - first] / way.back(), static_cast<double>(i), r.states[i].travel});
}

void add_ram(double from, double to, double state, double time, std::vector<PaceKey>& keys) {
    const double begin = keys.back().seconds;
    for (int i = 1; i <= eased_keys; ++i) {
        const double part = static_cast<double>(i) / eased_keys;
        keys.push_back({begin + time * part, state, from + eased(part) * (to - from)});
    }
}

void hold(double time, std::vector<PaceKey>& keys) {
    keys.push_back({keys.back().seconds + time, keys.back().state, keys.back().travel});
}

}  // namespace

int loaded_state(const Recording& recording) {
    int loaded = 0;
    for (std::size_t i = 0; i < recording.states.size(); ++i)
        if (recording.states[i].phase == Phase::pressing || recording.states[i].phase == Phase::held)
            loaded = static_cast<int>(i);
    return loaded;
}

Pace pace_of(const StrokeShow& show, double raised) {
    const Recording& r = *show.recording;
    const int loaded = loaded_state(r), last = static_cast<int>(r.states.size()) - 1;
    Pace pace;
    const auto begin = [&](const char* name, const std::string& words) {
        pace.passages.push_back({pace.keys.back().seconds, name, words});
    };
    pace.keys.push_back({0.0, 0.0, -raised});
    begin("Place", show.words.placed);
    hold(placed_time, pace.keys);
    begin("Approach", show.words.approach);
    add_ram(-raised, r.states.front().travel, 0.0, approach_time, pace.keys);
    begin("Press", show.words.press);
    add_states(r, 0, loaded, press_time, 1.0, 0.01, pace.keys);
    begin("Dwell", show.words.dwell);
    pace.pressed = pace.keys.back().seconds + 0.5 * dwell_time;
    hold(dwell_time, pace.keys);
    if (last == loaded) return pace;  // the stroke was not finished
    begin("Retract", show.words.retract);
    add_states(r, loaded, last, retract_time, 0.05, 1.0, pace.keys);
    begin("Free", show.words.free);
    add_ram(r.states.back().travel, -raised, last, raising_time, pace.keys);
    hold(free_time, pace.keys);
    return pace;
}

Window window_of(const Recording& recording) {
    const View view = choose_view(recording, {1280, 760});
    Window window;
    window.width = view.width_mm(), window.height = view.height_mm();
    window.low = view.centre - 0.5 * Place(window.width, window.height);
    window.raised = raised_by(recording, view);
    window.label_of_tool.assign(recording.tools.size(),
                                Place::Constant(std::numeric_limits<double>::quiet_NaN()));
    for (const ToolLabel& label : view.labels) {
        const Point off = label.box.centre() - view.stage.centre();
        window.label_of_tool[label.tool] = view.centre + Place(off.x(), -off.y()) / view.scale;
    }
    return window;
}

}  // namespace overbend::render
