#include "render/picture/tool_labels.h"

#include <algorithm>
#include <cmath>

#include "render/picture/text_width.h"

namespace overbend::render {

namespace {

using stroke::Recording;
using stroke::State;

struct Seen {
    std::vector<std::vector<Point>> tools;  // outlines at the end of the stroke
    std::vector<Point> strip;               // points of the mid-line in all states
    double strip_half = 0.0;                // half the strip's thickness
};

// The state in which the tools have gone furthest.
const State& deepest(const Recording& recording) {
    return *std::max_element(recording.states.begin(), recording.states.end(),
                             [](const State& a, const State& b) { return a.travel < b.travel; });
}

Seen what_is_seen(const Recording& recording, const View& view) {
    Seen seen;
    const State& last = deepest(recording);
    for (int k = 0; k < static_cast<int>(recording.tools.size()); ++k)
        seen.tools.push_back(
            tool_points(recording.tools[k], stroke::tool_position(recording.tools, k, last), view));
    seen.strip_half = 0.5 * recording.thickness * view.scale;
    // A few dozen states are enough: between two the strip moves by less than a label's height.
    const size_t every = std::max<size_t>(1, recording.states.size() / 40);
    for (size_t s = 0; s < recording.states.size(); ++s) {
        if (s % every != 0 && s + 1 != recording.states.size()) continue;
        const State& state = recording.states[s];
        for (size_t i = 0; i + 1 < state.x.size(); ++i) {
            const Point a = view.on_picture(Place(state.x[i], state.y[i]));
            const Point b = view.on_picture(Place(state.x[i + 1], state.y[i + 1]));
            const int parts = 1 + static_cast<int>((b - a).norm() / 12.0);
            for (int p = 0; p < parts; ++p) seen.strip.push_back(a + (b - a) * p / parts);
        }
    }
    return seen;
}

bool crossed_by_strip(const Seen& seen, const Rect& box, double room) {
    const Rect wide = grown(box, seen.strip_half + room);
    return std::any_of(seen.strip.begin(), seen.strip.end(), [&](const Point& p) {
        return p.x() > wide.x && p.x() < wide.right() && p.y() > wide.y && p.y() < wide.bottom();
    });
}

// How many of nine points of a box lie in an outline.
int points_inside(const std::vector<Point>& outline, const Rect& box) {
    int count = 0;
    for (int i = 0; i < 3; ++i)
        for (int j = 0; j < 3; ++j)
            count +=
                inside(outline, Point(box.x + 0.5 * i * box.width, box.y + 0.5 * j * box.height)) ? 1 : 0;
    return count;
}

// What speaks against a place, in pixels; the least wins. Best on the tool, near its middle, far from the
// strip's side of it; else near the tool, on nothing else.
double against(const Seen& seen, int tool, tool::Role role, const Rect& box, const View& view,
               double arc_room) {
    const std::vector<Point>& own = seen.tools[tool];
    double away = 0.0;
    for (size_t i = 0; i < seen.tools.size(); ++i)
        if (static_cast<int>(i) != tool) away += 300.0 * points_inside(seen.tools[i], box);
    const bool high = role == tool::Role::punch || role == tool::Role::ram || role == tool::Role::holder;
    const double to_edge = high ? box.y - view.stage.y : view.stage.bottom() - box.bottom();
    const Point axis = view.on_picture(Place::Zero());
    const double aside = std::abs(box.centre().x() - axis.x());
    // Below the working zone there is room for the bend angle's arc.
    const double near_arc =
        role == tool::Role::die ? std::max(0.0, arc_room - (aside - 0.5 * box.width)) : 0.0;
    if (points_inside(own, box) == 9) return away + to_edge + 0.3 * aside + 2.0 * near_arc;
    return away + 5000.0 + to_edge + 3.0 * (nearest_on(own, box.centre()) - box.centre()).norm();
}

bool is_seen(const std::vector<Point>& outline, const Rect& stage) {
    Rect box{1e300, 1e300, 0.0, 0.0};
    double right = -1e300;
    double bottom = -1e300;
    for (const Point& p : outline) {
        box.x = std::min(box.x, p.x());
        box.y = std::min(box.y, p.y());
        right = std::max(right, p.x());
        bottom = std::max(bottom, p.y());
    }
    box.width = right - box.x;
    box.height = bottom - box.y;
    return overlap(box, stage);
}

// The role and the name; the name alone when it has the role in it ("spring pad").
std::string label_words(const tool::RigidTool& t, const Layout& layout) {
    std::string role = role_word(t.role);
    if (layout.narrow || t.name.empty()) return role;
    return t.name.find(role) != std::string::npos ? t.name : role + " " + t.name;
}

}  // namespace

Point nearest_on(const std::vector<Point>& closed, const Point& p) {
    Point best = closed.front();
    for (size_t i = 0, j = closed.size() - 1; i < closed.size(); j = i++) {
        const Point side = closed[i] - closed[j];
        const double part = side.squaredNorm() > 0.0 ? (p - closed[j]).dot(side) / side.squaredNorm() : 0.0;
        const Point foot = closed[j] + std::min(1.0, std::max(0.0, part)) * side;
        if ((foot - p).squaredNorm() < (best - p).squaredNorm()) best = foot;
    }
    return best;
}

std::vector<ToolLabel> place_labels(const Recording& recording, const View& view, const Layout& layout) {
    const double u = layout.unit;
    const Seen seen = what_is_seen(recording, view);
    const Rect room = grown(view.stage, -0.6 * u);
    std::vector<ToolLabel> labels;
    for (int t = 0; t < static_cast<int>(recording.tools.size()); ++t) {
        if (!is_seen(seen.tools[t], view.stage)) continue;
        ToolLabel label;
        label.tool = t;
        label.words =
            fitted(label_words(recording.tools[t], layout), 1.05 * u, 0.45 * room.width, Weight::bold);
        const double width = text_width(label.words, 1.05 * u, Weight::bold) + 1.0 * u;
        double least = 1e300;
        for (double y = room.y; y + 1.8 * u <= room.bottom(); y += 0.5 * u)
            for (double x = room.x; x + width <= room.right(); x += 0.5 * u) {
                const Rect box{x, y, width, 1.8 * u};
                const bool taken = overlap(box, key_box(layout)) || overlap(box, layout.legend) ||
                                   std::any_of(labels.begin(), labels.end(), [&](const ToolLabel& other) {
                                       return overlap(grown(box, 0.3 * u), other.box);
                                   });
                if (taken) continue;
                const double score = against(seen, t, recording.tools[t].role, box, view, 7.5 * u);
                if (score >= least || crossed_by_strip(seen, box, 0.4 * u)) continue;
                least = score;
                label.box = box;
            }
        label.inside = least < 5000.0;
        if (least < 1e300)
            labels.push_back(label);  // without room there is no name rather than one over the strip
    }
    return labels;
}

}  // namespace overbend::render
