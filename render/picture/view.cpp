#include "render/picture/view.h"

#include <algorithm>
#include <cmath>

#include "render/picture/lens_place.h"
#include "render/picture/swept.h"
#include "render/picture/tool_labels.h"

namespace overbend::picture {

namespace {

using stroke::Recording;
using stroke::State;
using tool::Box;

// Where the strip is in any state.
Box swept_by_strip(const Recording& recording) {
    Box box{Place::Constant(1e300), Place::Constant(-1e300)};
    for (const State& s : recording.states)
        for (size_t i = 0; i < s.x.size(); ++i) {
            box.low = box.low.cwiseMin(Place(s.x[i], s.y[i]));
            box.high = box.high.cwiseMax(Place(s.x[i], s.y[i]));
        }
    box.low.array() -= 0.5 * recording.thickness;
    box.high.array() += 0.5 * recording.thickness;
    return box;
}

// Half the width of the zone in which the tools touch the strip; half the strip's when nothing touches it.
double half_working_zone(const Recording& recording, const Box& swept) {
    double half = 0.0;
    for (const State& s : recording.states)
        for (const stroke::ContactForce& c : s.contacts) half = std::max(half, std::abs(c.at.x()));
    if (half <= 0.0) half = 0.25 * (swept.high.x() - swept.low.x());
    return std::max(half, 4.0 * recording.thickness);
}

double half_die_width(const Recording& recording) {
    double half = 0.0;
    for (const tool::RigidTool& t : recording.tools)
        if (t.role == tool::Role::die)
            half = std::max(half, 0.5 * (t.outline.box().high.x() - t.outline.box().low.x()));
    return half;
}

// What has to be seen: the working zone, and the strip as far as it is not much larger than the die.
Box worth_seeing(const Recording& recording) {
    const Box swept = swept_by_strip(recording);
    const double zone = half_working_zone(recording, swept);
    const double limit = std::max(4.5 * zone, 2.0 * std::min(half_die_width(recording), 3.5 * zone));
    Box box;
    box.low = Place(std::max(-limit, std::min(swept.low.x(), -1.4 * zone)),
                    std::max(-limit, std::min(swept.low.y(), -0.9 * zone)));
    box.high = Place(std::min(limit, std::max(swept.high.x(), 1.4 * zone)),
                     std::min(limit, std::max(swept.high.y(), 0.9 * zone)));
    return box;
}

// The corner of the stage that the strip stays away from; the upper right one where it comes everywhere.
Rect note_place(const Recording& recording, const View& view, const Layout& layout) {
    const double u = layout.unit;
    const Rect room = grown(layout.stage, -0.6 * u);
    const double width = std::min(21.0 * u, room.width);
    const double height = 1.8 * u;
    const bool legend_there = layout.panel.width <= 0.0;
    const double low = (legend_there ? layout.legend.y - 0.4 * u : room.bottom()) - height;
    const Swept swept = swept_by_stroke(recording, view);
    const std::vector<Rect> corners = {{room.right() - width, room.y, width, height},
                                       {room.x, room.y, width, height},
                                       {room.right() - width, low, width, height}};
    for (const Rect& corner : corners)
        if (!overlap(corner, key_box(layout)) && !crossed(swept, corner, 1.5 * u)) return corner;
    return corners.front();
}

// With some room below left for the magnifier.
View fitted_view(const Recording& recording, const Layout& layout, const std::vector<Place>& places,
                 double room_below) {
    const double u = layout.unit;
    Box box = worth_seeing(recording);
    for (const Place& place : places) {
        const Place around = 2.0 * recording.thickness * Place::Ones();
        box.low = box.low.cwiseMin(place - around), box.high = box.high.cwiseMax(place + around);
    }
    // Bands above and below are left for the names of the tools and for the scale.
    const double top = 2.6 * u;
    const double bottom = 3.0 * u + room_below;
    const double side = 1.2 * u;
    View view;
    view.stage = layout.stage;
    const Place extent = box.high - box.low;
    view.scale = std::min((view.stage.width - 2.0 * side) / extent.x(),
                          (view.stage.height - top - bottom) / extent.y());
    view.centre = 0.5 * (box.low + box.high);
    view.centre.y() += 0.5 * (top - bottom) / view.scale;
    view.note = note_place(recording, view, layout);
    return view;
}

// The view with the largest magnifier: the strip is drawn smaller only when there is no room for a large one.
View view_with_lens(const Recording& recording, const Layout& layout, const ViewOptions& options) {
    constexpr double large = 12.0;      // units
    constexpr double least_part = 0.8;  // of the strip's size without a magnifier, once there is one
    const double u = layout.unit;
    View best = fitted_view(recording, layout, options.places, 0.0);
    const double whole = best.scale;
    for (const double room : {0.0, 4.0, 8.0, 11.0}) {
        if (room > 0.4 * layout.stage.height / u) break;
        View view = fitted_view(recording, layout, options.places, room * u);
        if (best.lens && view.scale < least_part * whole) break;
        view.lens = place_lens(recording, view, layout, options.bend_lines);
        if (view.lens && (!best.lens || view.lens->box.height > best.lens->box.height)) best = view;
        if (best.lens && best.lens->box.height >= large * u) break;
    }
    return best;
}

}  // namespace

Rect key_box(const Layout& layout) {
    const double u = layout.unit;
    const double width = std::min(24.5 * u, layout.stage.width - 1.2 * u);
    return {layout.stage.x + 0.6 * u, layout.stage.bottom() - 2.6 * u, width, 2.0 * u};
}

View choose_view(const Recording& recording, const PictureSize& size, const ViewOptions& options) {
    check_recording(recording);
    const Layout layout = lay_out(size, options.charts);
    View view = options.lens == Lens::shown ? view_with_lens(recording, layout, options)
                                            : fitted_view(recording, layout, options.places, 0.0);
    view.labels = place_labels(recording, view, layout);
    return view;
}

View zoomed(const Recording& recording, const View& view, const Zoom& zoom, const PictureSize& size,
            const ViewOptions& options, Names names) {
    View seen = view;
    seen.scale = zoom.times * view.scale;
    seen.centre = view.centre + zoom.shift;
    seen.angles.clear();
    const Layout layout = lay_out(size, options.charts);
    if (names == Names::placed_anew) {
        seen.note = note_place(recording, seen, layout);
        seen.lens.reset();
        if (options.lens == Lens::shown) seen.lens = place_lens(recording, seen, layout, options.bend_lines);
        seen.labels = place_labels(recording, seen, layout);
        return seen;
    }
    std::vector<Rect> taken = {key_box(layout), seen.note};
    if (seen.lens) taken.push_back(seen.lens->box), taken.push_back(seen.lens->key);
    if (layout.panel.width <= 0.0) taken.push_back(layout.legend);
    seen.labels.clear();
    for (ToolLabel label : view.labels) {
        const Point middle = label.box.centre();
        const Place on_stage(view.centre.x() + (middle.x() - view.stage.centre().x()) / view.scale,
                             view.centre.y() - (middle.y() - view.stage.centre().y()) / view.scale);
        const Point moved = seen.on_picture(on_stage) - middle;
        label.box.x += moved.x(), label.box.y += moved.y();
        if (overlap_any(label.box, taken) || !holds(seen.stage, label.box)) continue;
        taken.push_back(label.box);
        seen.labels.push_back(label);
    }
    return seen;
}

View between(const View& a, const View& b, double part) {
    View view = part < 0.5 ? a : b;
    view.centre = (1.0 - part) * a.centre + part * b.centre;
    view.scale = std::exp((1.0 - part) * std::log(a.scale) + part * std::log(b.scale));
    return view;
}

double raised_by(const Recording& recording, const View& view) {
    double touch = 0.0;
    for (const tool::RigidTool& t : recording.tools)
        if (t.role == tool::Role::punch) touch = t.position.y() + t.outline.box().low.y();
    const double wanted = view.top_mm() - 0.2 * view.height_mm() - touch;
    return std::min(std::max(wanted, 3.0 * recording.thickness), 0.6 * view.height_mm());
}

// The picture's y points down, so a turn changes its sign.
Path outline_path(const std::vector<tool::Piece>& outline, const Point& origin, double scale) {
    const auto on_picture = [&](const Place& p) { return Point(origin + scale * Point(p.x(), -p.y())); };
    Path path = polyline({on_picture(outline.front().start)});
    for (const tool::Piece& piece : outline) {
        const Point end = on_picture(piece.end);
        if (!piece.is_arc()) {
            path.push_back({Verb::line, end, end, end});
            continue;
        }
        const Place from = piece.start - piece.centre;
        const double direction = -std::atan2(from.y(), from.x());
        add_arc(path, on_picture(piece.centre), piece.radius * scale, direction, direction - piece.sweep);
    }
    path.push_back({Verb::close});
    return path;
}

std::vector<Point> tool_points(const Recording& recording, int k, const State& state, const View& view) {
    return tool_points(recording.tools[k], stroke::tool_position(recording.tools, k, state), view);
}

std::vector<Point> tool_points(const tool::RigidTool& tool, const Place& position, const View& view) {
    std::vector<Point> points;
    for (const tool::Piece& piece : tool.outline.pieces()) {
        const double radius = piece.radius * view.scale;
        // A chord of angle a is radius (1 - cos(a / 2)) from its arc.
        const double widest = 2.0 * std::acos(std::max(0.0, 1.0 - 0.25 / std::max(radius, 0.25)));
        const int parts =
            piece.is_arc() ? std::max(1, static_cast<int>(std::ceil(std::abs(piece.sweep) / widest))) : 1;
        for (int i = 0; i < parts; ++i) {
            const double turn = piece.sweep * i / parts;
            const Place from = piece.start - piece.centre;
            const Place turned(std::cos(turn) * from.x() - std::sin(turn) * from.y(),
                               std::sin(turn) * from.x() + std::cos(turn) * from.y());
            points.push_back(view.on_picture(position + (i == 0 ? piece.start : piece.centre + turned)));
        }
    }
    return points;
}

bool inside(const std::vector<Point>& closed, const Point& p) {
    bool in = false;
    for (size_t i = 0, j = closed.size() - 1; i < closed.size(); j = i++) {
        const Point& a = closed[i];
        const Point& b = closed[j];
        if ((a.y() > p.y()) == (b.y() > p.y())) continue;
        if (p.x() < a.x() + (b.x() - a.x()) * (p.y() - a.y()) / (b.y() - a.y())) in = !in;
    }
    return in;
}

std::pair<double, double> span_at(const std::vector<Point>& closed, double y) {
    double low = 1e300, high = -1e300;
    for (std::size_t i = 0, j = closed.size() - 1; i < closed.size(); j = i++) {
        const Point &a = closed[i], &b = closed[j];
        if ((a.y() > y) == (b.y() > y)) continue;
        const double x = a.x() + (b.x() - a.x()) * (y - a.y()) / (b.y() - a.y());
        low = std::min(low, x), high = std::max(high, x);
    }
    return {low, high};
}

}  // namespace overbend::picture
