#include "render/picture/tool_labels.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

#include "render/picture/swept.h"
#include "render/picture/text_width.h"

namespace overbend::picture {

namespace {

using stroke::Recording;
using stroke::State;

struct Seen {
    std::vector<std::vector<Point>> tools;  // outlines at the end of the stroke, a gauge's at its beginning
    std::vector<Rect> bounds;               // of each
    Swept stroke;                           // what the strip crosses
    Swept placed;                           // where it lies before: a gauge is drawn back afterwards
    std::vector<int> named;                 // tools
    bool key_below = true;                  // scale and key to the arrows
};

bool is_gauge(const tool::RigidTool& t) {
    return t.role == tool::Role::gauge;
}

Seen what_is_seen(const Recording& recording, const View& view) {
    Seen seen;
    const State& last = deepest_state(recording);
    for (int k = 0; k < static_cast<int>(recording.tools.size()); ++k) {
        const State& when = is_gauge(recording.tools[k]) ? recording.states.front() : last;
        seen.tools.push_back(tool_points(recording, k, when, view));
        seen.bounds.push_back(bounds_of(seen.tools.back()));
    }
    seen.stroke = swept_by_stroke(recording, view);
    seen.placed = swept_when_placed(recording, view);
    seen.named.resize(recording.tools.size());
    std::iota(seen.named.begin(), seen.named.end(), 0);
    return seen;
}

Seen what_is_seen(const Recording& recording, const View& view, const LabelledState& of) {
    Seen seen;
    for (int k = 0; k < static_cast<int>(recording.tools.size()); ++k) {
        const double back = k < static_cast<int>(of.state.compression.size()) ? of.state.compression[k] : 0.0;
        seen.tools.push_back(
            tool_points(recording.tools[k],
                        stroke::tool_position(recording.tools[k], of.travel, back, of.state.phase), view));
        seen.bounds.push_back(bounds_of(seen.tools.back()));
    }
    seen.stroke = seen.placed = swept_in(of.state, recording.thickness, view);
    seen.named = of.tools;
    seen.key_below = false;
    return seen;
}

// How many of nine points of a box lie in a tool's outline.
int points_inside(const Seen& seen, std::size_t tool, const Rect& box) {
    if (!overlap(grown(seen.bounds[tool], 1.0), box)) return 0;
    const std::vector<Point>& outline = seen.tools[tool];
    int count = 0;
    for (int i = 0; i < 3; ++i)
        for (int j = 0; j < 3; ++j)
            count +=
                inside(outline, Point(box.x + 0.5 * i * box.width, box.y + 0.5 * j * box.height)) ? 1 : 0;
    return count;
}

// How far a box reaches out of a tool to either side, one less the other, when it lies over all of it there:
// zero for words in the middle of a tool that is narrower than they are.
std::optional<double> off_middle(const std::vector<Point>& outline, const Rect& box) {
    const auto [left, right] = span_at(outline, box.centre().y());
    if (right < left || left <= box.x || right >= box.right()) return {};
    return std::abs((left - box.x) - (box.right() - right));
}

constexpr double beside = 5000.0;      // penalty of a place that is not on the tool
constexpr double on_another = 1500.0;  // a ninth of it on another tool: it would seem to be that one's name

// Penalty of a place, in pixels; the smallest wins. Best on the tool, near its middle, far from the
// strip's side of it; then in the middle of a tool that is narrower than the words; else wholly beside the
// tool and near it, on nothing else.
double against(const Seen& seen, int tool, tool::Role role, const Rect& box, const View& view, double u) {
    const std::vector<Point>& own = seen.tools[tool];
    double away = 0.0;
    for (size_t i = 0; i < seen.tools.size(); ++i)
        if (static_cast<int>(i) != tool) away += on_another * points_inside(seen, i, box);
    const bool high = role == tool::Role::punch || role == tool::Role::ram || role == tool::Role::holder;
    const double to_edge = high ? box.y - view.stage.y : view.stage.bottom() - box.bottom();
    const Point axis = view.on_picture(Place::Zero());
    const double aside = std::abs(box.centre().x() - axis.x());
    // Below the working zone there is room for the bend angle's arc.
    const double near_arc =
        role == tool::Role::die ? std::max(0.0, 7.5 * u - (aside - 0.5 * box.width)) : 0.0;
    const Rect with_air = grown(box, 0.35 * u);
    if (points_inside(seen, static_cast<std::size_t>(tool), with_air) == 9)
        return away + to_edge + 0.3 * aside + 2.0 * near_arc;
    if (points_inside(seen, static_cast<std::size_t>(tool), grown(box, 0.05 * u)) == 9)
        return away + 0.2 * beside + to_edge + 0.3 * aside + 2.0 * near_arc;
    if (const std::optional<double> off = off_middle(own, with_air))
        return away + 0.4 * beside + to_edge + 4.0 * *off + 2.0 * near_arc;
    const double straddling =
        points_inside(seen, static_cast<std::size_t>(tool), with_air) > 0 ? 1500.0 : 0.0;
    return away + beside + straddling + 0.15 * to_edge + 3.0 * distance(box, nearest_on(own, box.centre()));
}

// The role and the name ("die: block"); the name alone when it has the role in it ("spring pad").
std::string label_words(const tool::RigidTool& t, const Layout& layout) {
    std::string role = role_word(t.role);
    if (layout.narrow || t.name.empty()) return role;
    return t.name.find(role) != std::string::npos ? t.name : role + ": " + t.name;
}

std::vector<ToolLabel> labels_in(const Recording& recording, const View& view, const Layout& layout,
                                 const Seen& seen) {
    const double u = layout.unit;
    const Rect room = grown(view.stage, -0.6 * u);
    std::vector<Rect> kept = {layout.legend, view.note};
    if (seen.key_below) kept.push_back(key_box(layout));
    if (view.lens) kept.push_back(view.lens->key);
    std::vector<ToolLabel> labels;
    for (const int t : seen.named) {
        if (!overlap(seen.bounds[t], view.stage)) continue;
        ToolLabel label;
        label.tool = t;
        label.words =
            fitted(label_words(recording.tools[t], layout), 1.05 * u, 0.45 * room.width, Weight::bold);
        const double width = text_width(label.words, 1.05 * u, Weight::bold) + 1.0 * u;
        const tool::RigidTool& tool = recording.tools[t];
        const auto bad = [&](const Rect& box, double least) {
            const Rect wide = grown(box, 0.3 * u);
            const bool taken = overlap_any(box, kept) || (view.lens && overlap(wide, view.lens->box)) ||
                               std::any_of(labels.begin(), labels.end(),
                                           [&](const ToolLabel& other) { return overlap(wide, other.box); });
            if (taken) return 1e300;
            const double score = against(seen, t, tool.role, box, view, u);
            if (score >= least || crossed(is_gauge(tool) ? seen.placed : seen.stroke, box, 0.4 * u))
                return 1e300;
            label.inside = score < beside;
            return score;
        };
        const std::optional<Rect> box = best_place(room, width, 1.8 * u, 0.5 * u, bad);
        if (!box) continue;  // no name rather than one over the strip
        label.box = *box;
        labels.push_back(label);
    }
    return labels;
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
    return labels_in(recording, view, layout, what_is_seen(recording, view));
}

std::vector<ToolLabel> place_labels(const Recording& recording, const View& view, const Layout& layout,
                                    const LabelledState& seen) {
    return labels_in(recording, view, layout, what_is_seen(recording, view, seen));
}

}  // namespace overbend::picture
