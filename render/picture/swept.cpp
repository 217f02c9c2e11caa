#include "render/picture/swept.h"

#include <algorithm>

namespace overbend::picture {

namespace {

void add_state(const stroke::State& state, const View& view, std::vector<Point>& points) {
    for (size_t i = 0; i + 1 < state.x.size(); ++i) {
        const Point a = view.on_picture(Place(state.x[i], state.y[i]));
        const Point b = view.on_picture(Place(state.x[i + 1], state.y[i + 1]));
        const int parts = 1 + static_cast<int>((b - a).norm() / 12.0);
        for (int p = 0; p < parts; ++p) points.push_back(a + (b - a) * p / parts);
    }
    points.push_back(view.on_picture(Place(state.x.back(), state.y.back())));
}

// Boxes by the thousand are tried: each looks at the points of its own width alone.
void sort_from_left(std::vector<Point>& points) {
    std::sort(points.begin(), points.end(), [](const Point& a, const Point& b) { return a.x() < b.x(); });
}

}  // namespace

Swept swept_by_stroke(const stroke::Recording& recording, const View& view) {
    Swept swept;
    swept.half = 0.5 * recording.thickness * view.scale;
    // A few dozen states are enough: between two the strip moves by less than a label's height.
    const size_t every = std::max<size_t>(1, recording.states.size() / 40);
    for (size_t s = 0; s < recording.states.size(); ++s)
        if (s % every == 0 || s + 1 == recording.states.size())
            add_state(recording.states[s], view, swept.strip);
    sort_from_left(swept.strip);
    return swept;
}

Swept swept_in(const stroke::State& state, double thickness, const View& view) {
    Swept swept;
    swept.half = 0.5 * thickness * view.scale;
    add_state(state, view, swept.strip);
    sort_from_left(swept.strip);
    return swept;
}

Swept swept_when_placed(const stroke::Recording& recording, const View& view) {
    return swept_in(recording.states.front(), recording.thickness, view);
}

bool crossed(const Swept& swept, const Rect& box, double room) {
    const Rect wide = grown(box, swept.half + room);
    const auto first = std::partition_point(swept.strip.begin(), swept.strip.end(),
                                            [&](const Point& p) { return p.x() <= wide.x; });
    for (auto p = first; p != swept.strip.end() && p->x() < wide.right(); ++p)
        if (p->y() > wide.y && p->y() < wide.bottom()) return true;
    return false;
}

const stroke::State& deepest_state(const stroke::Recording& recording) {
    return *std::max_element(
        recording.states.begin(), recording.states.end(),
        [](const stroke::State& a, const stroke::State& b) { return a.travel < b.travel; });
}

}  // namespace overbend::picture
