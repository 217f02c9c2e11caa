#include "render/picture/drawing_list.h"

#include <algorithm>
#include <cmath>
#include <sstream>

#include "sim/units.h"

namespace overbend::picture {

namespace {

Segment move_to(const Point& p) {
    return {Verb::move, p, p, p};
}
Segment line_to(const Point& p) {
    return {Verb::line, p, p, p};
}
Segment close_path() {
    return {Verb::close, Point::Zero(), Point::Zero(), Point::Zero()};
}

Point on_circle(const Point& centre, double radius, double direction) {
    return centre + radius * Point(std::cos(direction), std::sin(direction));
}

void write(std::ostream& out, const Colour& c) {
    out << c.red << ',' << c.green << ',' << c.blue << ',' << c.opacity;
}

void write(std::ostream& out, const Shape& s) {
    out << "shape";
    if (s.fill) write(out << " fill ", *s.fill);
    if (s.stroke) write(out << " stroke ", *s.stroke);
    out << " width " << s.line_width;
    if (s.edges == Edges::coarse) out << " coarse";
    for (const double d : s.dash) out << " dash " << d;
    if (s.clip)
        out << " clip " << s.clip->x << ',' << s.clip->y << ',' << s.clip->width << ',' << s.clip->height;
    for (const Segment& g : s.path) {
        out << " mlcz"[1 + static_cast<int>(g.verb)] << g.to.x() << ',' << g.to.y();
        if (g.verb == Verb::curve)
            out << ';' << g.handle_start.x() << ',' << g.handle_start.y() << ';' << g.handle_end.x() << ','
                << g.handle_end.y();
    }
    out << '\n';
}

void write(std::ostream& out, const Text& t) {
    out << "text " << t.at.x() << ',' << t.at.y() << " across " << static_cast<int>(t.across) << " size "
        << t.size << " weight " << static_cast<int>(t.weight) << ' ';
    write(out, t.colour);
    if (t.halo) write(out << " halo ", *t.halo);
    out << " \"" << t.words << "\"\n";
}

}  // namespace

Rect bounds_of(const std::vector<Point>& points) {
    Point low = points.front(), high = low;
    for (const Point& p : points) low = low.cwiseMin(p), high = high.cwiseMax(p);
    return {low.x(), low.y(), high.x() - low.x(), high.y() - low.y()};
}

Rect grown(const Rect& r, double by) {
    return {r.x - by, r.y - by, r.width + 2.0 * by, r.height + 2.0 * by};
}

bool overlap(const Rect& a, const Rect& b) {
    return a.x < b.right() && b.x < a.right() && a.y < b.bottom() && b.y < a.bottom();
}

bool overlap_any(const Rect& box, const std::vector<Rect>& others) {
    return std::any_of(others.begin(), others.end(), [&](const Rect& other) { return overlap(box, other); });
}

bool holds(const Rect& outer, const Rect& inner) {
    return inner.x >= outer.x && inner.y >= outer.y && inner.right() <= outer.right() &&
           inner.bottom() <= outer.bottom();
}

bool holds(const Rect& box, const Point& p) {
    return p.x() >= box.x && p.x() <= box.right() && p.y() >= box.y && p.y() <= box.bottom();
}

double distance(const Rect& box, const Point& p) {
    const double dx = std::max({box.x - p.x(), 0.0, p.x() - box.right()});
    const double dy = std::max({box.y - p.y(), 0.0, p.y() - box.bottom()});
    return std::hypot(dx, dy);
}

Path polyline(const std::vector<Point>& points) {
    Path path;
    path.reserve(points.size() + 1);
    for (const Point& p : points) path.push_back(path.empty() ? move_to(p) : line_to(p));
    return path;
}

Path polygon(const std::vector<Point>& points) {
    Path path = polyline(points);
    path.push_back(close_path());
    return path;
}

void add_stretch(Path& path, const Point& from, const Point& to) {
    path.push_back(move_to(from));
    path.push_back(line_to(to));
}

// A cubic for each part of at most a quarter turn: within 3e-4 of the radius, which no pixel shows.
void add_arc(Path& path, const Point& centre, double radius, double from, double to) {
    const int parts = std::max(1, static_cast<int>(std::ceil(std::abs(to - from) / (0.5 * pi) - 1e-9)));
    const double step = (to - from) / parts;
    const double handle = radius * 4.0 / 3.0 * std::tan(0.25 * step);
    for (int i = 0; i < parts; ++i) {
        const double a = from + i * step;
        const double b = a + step;
        const Point start = on_circle(centre, radius, a);
        const Point end = on_circle(centre, radius, b);
        path.push_back({Verb::curve, end, start + handle * Point(-std::sin(a), std::cos(a)),
                        end - handle * Point(-std::sin(b), std::cos(b))});
    }
}

Path arc(const Point& centre, double radius, double from, double to) {
    Path path{move_to(on_circle(centre, radius, from))};
    add_arc(path, centre, radius, from, to);
    return path;
}

Path circle(const Point& centre, double radius) {
    Path path = arc(centre, radius, 0.0, 2.0 * pi);
    path.push_back(close_path());
    return path;
}

Path rectangle(const Rect& r, double corner_radius) {
    const double c = std::min(corner_radius, 0.5 * std::min(r.width, r.height));
    if (c <= 0.0) return polygon({{r.x, r.y}, {r.right(), r.y}, {r.right(), r.bottom()}, {r.x, r.bottom()}});
    Path path{move_to({r.x, r.y + c})};
    add_arc(path, {r.x + c, r.y + c}, c, pi, 1.5 * pi);
    path.push_back(line_to({r.right() - c, r.y}));
    add_arc(path, {r.right() - c, r.y + c}, c, -0.5 * pi, 0.0);
    path.push_back(line_to({r.right(), r.bottom() - c}));
    add_arc(path, {r.right() - c, r.bottom() - c}, c, 0.0, 0.5 * pi);
    path.push_back(line_to({r.x + c, r.bottom()}));
    add_arc(path, {r.x + c, r.bottom() - c}, c, 0.5 * pi, pi);
    path.push_back(close_path());
    return path;
}

// The capitals of DejaVu Sans are 0.729 of the em high (from the font's own tables).
namespace {

struct Scaler {
    double times;
    void operator()(Shape& shape) const {
        for (Segment& s : shape.path) s.to *= times, s.handle_start *= times, s.handle_end *= times;
        shape.line_width *= times;
        for (double& d : shape.dash) d *= times;
        if (shape.clip)
            shape.clip = Rect{times * shape.clip->x, times * shape.clip->y, times * shape.clip->width,
                              times * shape.clip->height};
    }
    void operator()(Text& text) const { text.at *= times, text.size *= times; }
};

}  // namespace

DrawingList scaled(const DrawingList& list, double times) {
    DrawingList large = list;
    large.width = static_cast<int>(std::lround(times * list.width));
    large.height = static_cast<int>(std::lround(times * list.height));
    for (Item& item : large.items) std::visit(Scaler{times}, item);
    return large;
}

double baseline_for_middle(double y, double size) {
    return y + 0.5 * 0.729 * size;
}

std::string as_text(const DrawingList& list) {
    std::ostringstream out;
    out.imbue(std::locale::classic());
    out.precision(17);
    out << "picture " << list.width << " x " << list.height << ' ';
    write(out, list.background);
    out << " \"" << list.title << "\"\n";
    for (const Item& item : list.items) std::visit([&](const auto& i) { write(out, i); }, item);
    return out.str();
}

}  // namespace overbend::picture
