#include "render/report/player.h"

#include "render/picture/pace.h"
#include "render/picture/tool_labels.h"
#include "render/picture/view.h"

namespace overbend::report {

using namespace picture;

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

// States spread over a time.
void add_states(const Recording& r, int first, int last, double time, double by_travel, double by_shift,
                std::vector<PaceKey>& keys) {
    const std::vector<double> way = way_between(r, first, last, by_travel, by_shift);
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

Pace pace_of(const Recording& r, const PassageWords& told, double raised) {
    const int loaded = stroke::loaded_state(r), last = static_cast<int>(r.states.size()) - 1;
    Pace pace;
    const auto begin = [&](const char* name, const std::string& words) {
        pace.passages.push_back({pace.keys.back().seconds, name, words});
    };
    pace.keys.push_back({0.0, 0.0, -raised});
    begin("Place", told.placed);
    hold(placed_time, pace.keys);
    begin("Approach", told.approach);
    add_ram(-raised, r.states.front().travel, 0.0, approach_time, pace.keys);
    begin("Press", told.press);
    add_states(r, 0, loaded, press_time, 1.0, 0.01, pace.keys);
    begin("Dwell", told.dwell);
    pace.pressed = pace.keys.back().seconds + 0.5 * dwell_time;
    hold(dwell_time, pace.keys);
    if (last == loaded) return pace;  // the stroke was not finished
    begin("Retract", told.retract);
    add_states(r, loaded, last, retract_time, 0.05, 1.0, pace.keys);
    begin("Free", told.free);
    add_ram(r.states.back().travel, -raised, last, raising_time, pace.keys);
    hold(free_time, pace.keys);
    return pace;
}

PlayerView player_view(const Recording& recording) {
    const View view = choose_view(recording, {1280, 760});
    PlayerView shown;
    shown.width = view.width_mm(), shown.height = view.height_mm();
    shown.low = view.centre - 0.5 * Place(shown.width, shown.height);
    shown.raised = raised_by(recording, view);
    const auto in_press = [&](const Point& p) {
        const Point off = p - view.stage.centre();
        return Place(view.centre + Place(off.x(), -off.y()) / view.scale);
    };
    const State& pressed = recording.states[stroke::loaded_state(recording)];
    for (const ToolLabel& label : view.labels) {
        const Place stands = stroke::tool_position(recording.tools, label.tool, pressed);
        const std::vector<Point> outline = tool_points(recording, label.tool, pressed, view);
        // Labels that overhang their tool's edge go on it where the word of its role has room there.
        Point middle = label.box.centre();
        const auto [low, high] = span_at(outline, middle.y());
        const double role =
            letter * view.stage.width *
            static_cast<double>(std::string(tool::role_word(recording.tools[label.tool].role)).size());
        const bool fits = !label.inside && low < middle.x() && middle.x() < high && high - low > role;
        double half = 0.5 * label.box.width;
        if (fits) middle.x() = 0.5 * (low + high), half = 0.5 * (high - low);
        const Point nearest = nearest_on(outline, middle);
        shown.labels.push_back({label.tool, label.words, in_press(middle), half / view.scale,
                                label.inside || fits, in_press(nearest) - stands});
    }
    return shown;
}

}  // namespace overbend::report
