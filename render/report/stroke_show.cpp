#include "render/report/stroke_show.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "render/picture/tool_labels.h"
#include "render/picture/view.h"

namespace overbend::report {

namespace {

using stroke::Phase;
using stroke::Recording;
using stroke::State;

// Seconds of the passages.
constexpr double placed_time = 0.6, approach_time = 0.9, press_time = 3.4, dwell_time = 0.7,
                 retract_time = 1.4, raising_time = 0.8, free_time = 1.4;
constexpr int eased_keys = 12;
// Width of a letter on a page over that of the picture: 8 of 700 pixels.
constexpr double letter = 0.0115;

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

// How far the outline reaches to either side at a height; nothing where it does not reach up to it.
std::pair<double, double> span_at(const std::vector<picture::Point>& closed, double y) {
    double low = 1e300, high = -1e300;
    for (std::size_t i = 0, j = closed.size() - 1; i < closed.size(); j = i++) {
        const picture::Point &a = closed[i], &b = closed[j];
        if ((a.y() > y) == (b.y() > y)) continue;
        const double x = a.x() + (b.x() - a.x()) * (y - a.y()) / (b.y() - a.y());
        low = std::min(low, x), high = std::max(high, x);
    }
    return {low, high};
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
    const picture::View view = picture::choose_view(recording, {1280, 760});
    Window window;
    window.width = view.width_mm(), window.height = view.height_mm();
    window.low = view.centre - 0.5 * picture::Place(window.width, window.height);
    window.raised = picture::raised_by(recording, view);
    const auto in_press = [&](const picture::Point& p) {
        const picture::Point off = p - view.stage.centre();
        return picture::Place(view.centre + picture::Place(off.x(), -off.y()) / view.scale);
    };
    const State& pressed = recording.states[loaded_state(recording)];
    for (const picture::ToolLabel& label : view.labels) {
        const picture::Place stands = stroke::tool_position(recording.tools, label.tool, pressed);
        const std::vector<picture::Point> outline =
            picture::tool_points(recording.tools[label.tool], stands, view);
        // Labels that overhang their tool's edge go on it where the word of its role has room there.
        picture::Point middle = label.box.centre();
        const auto [low, high] = span_at(outline, middle.y());
        const double role =
            letter * view.stage.width *
            static_cast<double>(std::string(tool::role_word(recording.tools[label.tool].role)).size());
        const bool fits = !label.inside && low < middle.x() && middle.x() < high && high - low > role;
        double half = 0.5 * label.box.width;
        if (fits) middle.x() = 0.5 * (low + high), half = 0.5 * (high - low);
        const picture::Point nearest = picture::nearest_on(outline, middle);
        window.labels.push_back({label.tool, label.words, in_press(middle), half / view.scale,
                                 label.inside || fits, in_press(nearest) - stands});
    }
    return window;
}

}  // namespace overbend::report
