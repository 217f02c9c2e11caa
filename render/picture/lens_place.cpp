#include "render/picture/lens_place.h"

#include <algorithm>

#include "render/picture/swept.h"

namespace overbend::picture {

namespace {

using stroke::Recording;

constexpr double seen_across = 5.5;   // thicknesses that the magnifier is wide
constexpr double least_useful = 1.5;  // magnification
constexpr double key_height = 3.2;    // units
constexpr double arcs = 8.6;          // units round the bend, in which its angle's arcs are drawn

double round_magnification(double value) {
    double best = least_useful;
    for (const double m :
         {1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0})
        if (m <= value) best = m;
    return best;
}

// The middle of lines that are seen together, else the first of them.
double looked_at(const Recording& recording, const std::vector<double>& lines) {
    if (lines.empty()) return 0.5 * (recording.blank_position.front() + recording.blank_position.back());
    const auto [low, high] = std::minmax_element(lines.begin(), lines.end());
    return *high - *low < 0.6 * seen_across * recording.thickness ? 0.5 * (*low + *high) : lines.front();
}

// The way of the looked-at place and of all bend lines on the picture.
std::vector<Point> bend_ways(const Recording& recording, const View& view, const std::vector<double>& lines) {
    std::vector<Point> way;
    const size_t every = std::max<size_t>(1, recording.states.size() / 20);
    for (const double line : lines)
        for (size_t s = 0; s < recording.states.size(); s += every)
            way.push_back(view.on_picture(spot_on(recording, recording.states[s], line).at));
    return way;
}

// How many of 7 x 7 points of a box lie in a tool. bounds: of each.
int points_on_tools(const std::vector<std::vector<Point>>& tools, const std::vector<Rect>& bounds,
                    const Rect& box) {
    std::vector<const std::vector<Point>*> near;
    for (std::size_t i = 0; i < tools.size(); ++i)
        if (overlap(grown(bounds[i], 1.0), box)) near.push_back(&tools[i]);
    int count = 0;
    for (int i = 0; i < 7; ++i)
        for (int j = 0; j < 7; ++j) {
            const Point p(box.x + i * box.width / 6.0, box.y + j * box.height / 6.0);
            count += std::any_of(near.begin(), near.end(), [&](const auto* t) { return inside(*t, p); });
        }
    return count;
}

struct Room {
    Rect stage;
    std::vector<Rect> from_above;  // boxes of what comes down with the ram, at the end of the stroke
    Swept swept;
    std::vector<Point> ways;
    std::vector<std::vector<Point>> tools;
    std::vector<Rect> bounds;  // of the tools
    std::vector<Rect> taken;
};

enum class Punch { kept_clear, may_be_covered };

// The best place for a box of this size; none when the strip comes everywhere.
std::optional<Rect> best_place(const Room& room, double width, double height, double u, Punch punch) {
    const Rect& stage = room.stage;
    return best_place(stage, width, height, 0.5 * u, [&](const Rect& box, double least) {
        if (punch == Punch::kept_clear && overlap_any(grown(box, 0.5 * u), room.from_above)) return 1e300;
        double near = 1e300;
        for (const Point& p : room.ways) near = std::min(near, distance(box, p));
        if (near < arcs * u) return 1e300;
        const double edge = std::min(
            {box.x - stage.x, stage.right() - box.right(), box.y - stage.y, stage.bottom() - box.bottom()});
        double against = near + 2.0 * edge;
        if (against >= least) return 1e300;
        against += 4.0 * u * points_on_tools(room.tools, room.bounds, box) / 7.0;
        if (against >= least) return 1e300;
        const bool taken = overlap_any(grown(box, 0.4 * u), room.taken) || crossed(room.swept, box, 0.7 * u);
        return taken ? 1e300 : against;
    });
}

}  // namespace

std::optional<LensPlace> place_lens(const Recording& recording, const View& view, const Layout& layout,
                                    const std::vector<double>& bend_lines) {
    const double u = layout.unit;
    LensPlace lens;
    lens.blank_position = looked_at(recording, bend_lines);
    std::vector<double> lines = bend_lines;
    lines.push_back(lens.blank_position);
    Room room;
    room.stage = grown(view.stage, -0.6 * u);
    room.swept = swept_by_stroke(recording, view);
    room.ways = bend_ways(recording, view, lines);
    const stroke::State& last = deepest_state(recording);
    for (int k = 0; k < static_cast<int>(recording.tools.size()); ++k) {
        const tool::RigidTool& t = recording.tools[k];
        room.tools.push_back(tool_points(recording, k, last, view));
        room.bounds.push_back(bounds_of(room.tools.back()));
        if (t.moves_with_ram()) room.from_above.push_back(room.bounds.back());
    }
    room.taken = {key_box(layout), view.note};
    if (layout.panel.width <= 0.0) room.taken.push_back(layout.legend);
    for (const Punch punch : {Punch::kept_clear, Punch::may_be_covered})
        for (const double height : {15.0, 13.5, 12.0, 10.5, 9.0}) {
            const double width = 1.2 * height * u;
            const double wanted = width / (seen_across * recording.thickness * view.scale);
            if (wanted < least_useful) break;
            const std::optional<Rect> found = best_place(room, width, (height + key_height) * u, u, punch);
            if (!found) continue;
            lens.magnification = round_magnification(wanted);
            lens.box = {found->x, found->y, width, height * u};
            lens.key = {found->x, lens.box.bottom(), width, key_height * u};
            return lens;
        }
    return {};
}

View lens_view(const LensPlace& lens, const View& stage, const Place& looked_at) {
    View view;
    view.stage = lens.box;
    view.centre = looked_at;
    view.scale = lens.magnification * stage.scale;
    return view;
}

}  // namespace overbend::picture
