#include "render/picture/label_room.h"

#include <algorithm>
#include <cmath>

#include "render/picture/text_width.h"
#include "sim/units.h"

namespace overbend::picture {

namespace {

// Whether a line comes into a box.
bool crossed(const std::vector<Point>& curve, const Rect& box) {
    for (std::size_t i = 0; i + 1 < curve.size(); ++i) {
        const Point a = curve[i], way = curve[i + 1] - a;
        const int parts =
            std::max(1, static_cast<int>(std::ceil(4.0 * way.norm() / std::max(box.height, 1.0))));
        for (int k = 0; k <= parts; ++k) {
            if (holds(box, a + way * (static_cast<double>(k) / parts))) return true;
        }
    }
    return false;
}

enum class Off { lines_and_words, words };

std::optional<Rect> room_off(const LabelRoom& room, const Point& near, double width, double height, double u,
                             Off off) {
    for (const double away : {0.7, 1.4, 2.2, 3.2, 4.5, 6.0, 8.0, 11.0, 14.0})
        for (const double turn : {-0.25, -0.125, -0.375, 0.0, 0.5, 0.25, 0.125, 0.375}) {
            const double direction = 2.0 * pi * turn;
            const Point way(std::cos(direction), std::sin(direction));
            const Point middle = near + away * u * way + Point(0.5 * width * way.x(), 0.5 * height * way.y());
            const Rect box{middle.x() - 0.5 * width, middle.y() - 0.5 * height, width, height};
            if (!holds(room.inside, box)) continue;
            if (overlap_any(box, room.taken)) continue;
            const auto crosses = [&](const std::vector<Point>& c) { return crossed(c, box); };
            if (off == Off::lines_and_words && std::any_of(room.lines.begin(), room.lines.end(), crosses))
                continue;
            return box;
        }
    return {};
}

}  // namespace

std::optional<Rect> find_room(const LabelRoom& room, const Point& near, double width, double height,
                              double unit) {
    const std::optional<Rect> box = room_off(room, near, width, height, unit, Off::lines_and_words);
    return box ? box : room_off(room, near, width, height, unit, Off::words);
}

std::optional<Rect> add_label(DrawingList& list, LabelRoom& room, const Point& near, const Text& words) {
    const double u = words.size;
    const double width = text_width(words.words, u, words.weight) + 0.5 * u;
    const std::optional<Rect> box = find_room(room, near, width, 1.35 * u, u);
    if (!box) return {};
    Text text = words;
    text.across = Across::left;
    text.at = {box->x + 0.25 * u, baseline_for_middle(box->centre().y(), u)};
    list.items.push_back(text);
    room.taken.push_back(*box);
    return box;
}

}  // namespace overbend::picture
