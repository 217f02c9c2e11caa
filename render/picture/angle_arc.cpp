#include "render/picture/angle_arc.h"

#include <algorithm>
#include <cmath>

#include "render/picture/swept.h"
#include "render/picture/text_width.h"
#include "sim/units.h"

namespace overbend::picture {

namespace {

constexpr double angle_seen = 0.035;  // rad: below two degrees there is no arc to be seen
constexpr double strip_room = 0.3;    // units, between words and strip
constexpr int most_instants = 16;     // of a stroke, that words are placed for

// A bend at one instant of the stroke.
struct Sight {
    AngleArc arc;
    Point tip = Point::Zero();  // where words belong
    const stroke::State* state = nullptr;
    Swept strip;
    bool decides = false;  // at the stop, and in the end
};

std::vector<Sight> sights(const stroke::Recording& recording, const View& view, double unit,
                          const BendMark& mark) {
    std::vector<Sight> found;
    const std::size_t every = std::max<std::size_t>(1, recording.states.size() / most_instants);
    for (std::size_t i = 0; i < recording.states.size(); ++i) {
        const stroke::State& state = recording.states[i];
        const bool decides = state.phase == stroke::Phase::held || state.phase == stroke::Phase::free;
        if (i % every != 0 && !decides) continue;
        const MeasuredBend bend = measured(recording, state, mark);
        if (!has_arc(bend)) continue;
        Sight s;
        s.arc = angle_arc(recording, view, bend, unit);
        s.tip = on_arc(s.arc, s.arc.radius, s.arc.middle());
        s.state = &state;
        s.strip = swept_in(state, recording.thickness, view);
        s.decides = decides;
        found.push_back(s);
    }
    return found;
}

Point nearest_in(const Rect& box, const Point& p) {
    return {std::clamp(p.x(), box.x, box.right()), std::clamp(p.y(), box.y, box.bottom())};
}

bool crosses(const Point& a, const Point& b, const Point& c, const Point& d) {
    const auto side = [](const Point& p, const Point& q, const Point& r) {
        return (q.x() - p.x()) * (r.y() - p.y()) - (q.y() - p.y()) * (r.x() - p.x());
    };
    return side(a, b, c) * side(a, b, d) < 0.0 && side(c, d, a) * side(c, d, b) < 0.0;
}

bool crosses_strip(const stroke::State& state, const View& view, const Point& a, const Point& b) {
    for (std::size_t i = 0; i + 1 < state.x.size(); ++i)
        if (crosses(a, b, view.on_picture(Place(state.x[i], state.y[i])),
                    view.on_picture(Place(state.x[i + 1], state.y[i + 1]))))
            return true;
    return false;
}

bool lies_on_arc(const AngleArc& arc, const Rect& box) {
    for (int i = 0; i <= 12; ++i) {
        const Point p = on_arc(arc, arc.radius, arc.from + i / 12.0 * (arc.to - arc.from));
        const Point q = on_arc(arc, (arc.radius + 15.0) * i / 12.0, arc.from);
        for (const Point& each : {p, q})
            if (overlap(box, {each.x() - 1.0, each.y() - 1.0, 2.0, 2.0})) return true;
    }
    return false;
}

// How much worse than lying right beside its arc all the time a place is, in units; 1e300: it cannot be.
double badness(const std::vector<Sight>& seen, const View& view, const Rect& box, double unit) {
    double sum = 0.0;
    for (const Sight& s : seen) {
        const Point end = nearest_in(box, s.tip);
        sum += (end - s.tip).norm() / unit;
        if (crossed(s.strip, box, strip_room * unit)) {
            if (s.decides) return 1e300;
            sum += 14.0;
        }
        if (lies_on_arc(s.arc, grown(box, 0.3 * unit))) sum += 6.0;
        if (crosses_strip(*s.state, view, s.tip, end)) sum += 10.0;
    }
    return sum / static_cast<double>(seen.size());
}

// What words of angles keep off for the whole stroke.
struct Kept {
    std::vector<Rect> taken;
    std::vector<Point> contacts;
};

Kept kept_clear(const stroke::Recording& recording, const View& view, const Layout& layout) {
    Kept kept;
    kept.taken = {key_box(layout), view.note};
    for (const ToolLabel& label : view.labels) kept.taken.push_back(label.box);
    if (view.lens) kept.taken.push_back(view.lens->box), kept.taken.push_back(view.lens->key);
    if (layout.panel.width <= 0.0) kept.taken.push_back(layout.legend);
    for (const stroke::State& s : recording.states)
        for (const stroke::ContactForce& c : s.contacts) kept.contacts.push_back(view.on_picture(c.at));
    return kept;
}

bool is_free(const Kept& kept, const Rect& box, double unit) {
    const Rect wide = grown(box, 0.3 * unit);
    if (overlap_any(wide, kept.taken)) return false;
    const Rect wider = grown(box, unit);
    return std::none_of(kept.contacts.begin(), kept.contacts.end(), [&](const Point& p) {
        return overlap(wider, {p.x() - 0.5, p.y() - 0.5, 1.0, 1.0});
    });
}

std::optional<Rect> best_place(const std::vector<Sight>& seen, const View& view, const Kept& kept,
                               const Rect& size, double unit) {
    const Rect room = grown(view.stage, -0.5 * unit);
    return best_place(room, size.width, size.height, unit, [&](const Rect& box, double least) {
        // The last instants alone tell enough of a place that is far worse than the best.
        if (distance(box, seen.back().tip) / unit > 3.0 * least + 8.0 || !is_free(kept, box, unit))
            return 1e300;
        return badness(seen, view, box, unit);
    });
}

}  // namespace

bool off_strip(const Rect& words, const stroke::State& state, double thickness, const View& view,
               double unit) {
    return !crossed(swept_in(state, thickness, view), words, strip_room * unit);
}

bool has_arc(const MeasuredBend& bend) {
    return std::abs(bend.angle) >= angle_seen;
}

AngleArc arc_of_radius(const stroke::Recording& recording, const View& view, const MeasuredBend& bend,
                       double radius) {
    AngleArc arc;
    arc.corner = view.on_picture(bend.corner);
    arc.radius = radius;
    // A bend left of the punch's axis is measured on its left: the arc stands outside the tools' middle.
    if (bend.corner.x() < -0.5 * recording.thickness) {
        arc.from = pi - bend.right.theta;
        arc.to = pi - bend.left.theta;
    } else {
        arc.from = -bend.left.theta;
        arc.to = -bend.right.theta;
    }
    return arc;
}

AngleArc angle_arc(const stroke::Recording& recording, const View& view, const MeasuredBend& bend,
                   double unit) {
    const double flat = (bend.right.at - bend.corner).norm() * view.scale;
    AngleArc whole =
        arc_of_radius(recording, view, bend, std::min(7.0 * unit, std::max(4.0 * unit, 0.9 * flat)));
    const Rect room = grown(view.stage, -2.0 * unit);
    for (const double direction : {whole.from, whole.to}) {
        const double down = std::sin(direction);
        if (down > 0.1) whole.radius = std::min(whole.radius, (room.bottom() - whole.corner.y()) / down);
        if (down < -0.1) whole.radius = std::min(whole.radius, (room.y - whole.corner.y()) / down);
    }
    whole.radius = std::max(2.5 * unit, whole.radius);
    return whole;
}

Point on_arc(const AngleArc& a, double radius, double direction) {
    return a.corner + radius * Point(std::cos(direction), std::sin(direction));
}

double angle_letters(double unit) {
    return 1.05 * unit;
}

double angle_line_height(double unit) {
    return 1.4 * angle_letters(unit);
}

Rect angle_plate(const Point& corner, const std::vector<std::string>& lines, double unit) {
    const double size = angle_letters(unit);
    double width = 0.0;
    for (const std::string& words : lines) width = std::max(width, text_width(words, size, Weight::bold));
    return {corner.x(), corner.y(), width + 0.9 * size,
            angle_line_height(unit) * static_cast<double>(lines.size()) + 0.4 * size};
}

std::vector<std::string> longest_angle_words(const BendMark& mark, const Layout& layout) {
    if (layout.narrow) return {"180.0\u00b0"};
    const std::string name = mark.name.empty() ? "" : mark.name + " ";
    return {name + "under load 180.0\u00b0", "under load 180.0\u00b0"};
}

std::vector<std::optional<AnglePlace>> place_angles(const stroke::Recording& recording, const View& view,
                                                    const Layout& layout,
                                                    const std::vector<BendMark>& bends) {
    const double u = layout.unit;
    Kept kept = kept_clear(recording, view, layout);
    std::vector<std::optional<AnglePlace>> places;
    for (const BendMark& mark : bends) {
        places.emplace_back();
        const std::vector<Sight> seen = sights(recording, view, u, mark);
        if (seen.empty()) continue;
        const Rect size = angle_plate(Point::Zero(), longest_angle_words(mark, layout), u);
        const std::optional<Rect> box = best_place(seen, view, kept, size, u);
        if (!box) continue;
        kept.taken.push_back(*box);
        const bool right_of_bend = box->centre().x() > seen.back().arc.corner.x();
        places.back() = AnglePlace{*box, right_of_bend ? Anchor::left : Anchor::right};
    }
    return places;
}

}  // namespace overbend::picture
