// Ways to draw radii and angles; declared in place_dimensions.h.

#include <algorithm>
#include <cmath>

#include "render/drawing/place_dimensions.h"
#include "sim/units.h"

namespace overbend::drawing {

using namespace picture;

namespace {

Point towards(double direction) {  // counter-clockwise on the thing, so y is turned
    return Point(std::cos(direction), -std::sin(direction));
}

Placing leader(const Point& tip, const Point& way, double length, double shelf, const std::string& words) {
    Placing made;
    const Point knee = tip + length * way, end = knee + Point(shelf, 0.0);
    made.ink.lines.push_back({tip, knee, Stroke::leader});
    made.ink.lines.push_back({knee, end, Stroke::leader});
    made.ink.arrows.push_back({tip, -way});
    const Label size = label_at(words, end);
    const double half = 0.5 * size.box.width + 0.8;
    made.ink.labels.push_back(label_at(words, end + Point(shelf > 0.0 ? half : -half, 0.0)));
    made.effort = 0.12 * length;
    return made;
}

// An arc on paper as lines.
void add_arc_lines(Ink& ink, const Point& centre, double radius, double start, double sweep) {
    const int count = std::max(4, static_cast<int>(std::ceil(std::abs(sweep) * radius / 0.8)));
    for (int i = 0; i < count; ++i)
        ink.lines.push_back({centre + radius * towards(start + sweep * i / count),
                             centre + radius * towards(start + sweep * (i + 1) / count), Stroke::dimension});
}

// From the vertex's leg to beyond the arc, where its straight edge does not reach.
void add_leg(Ink& ink, const Point& vertex, double direction, double from, double to, double radius) {
    const double end = radius + overshoot;
    if (to >= radius && from <= radius) return;  // the arc ends on the edge itself
    const double begin = from > radius ? from - off_outline : to + off_outline;
    const double stop = from > radius ? radius - overshoot : end;
    if (std::abs(stop - begin) < 0.3) return;
    ink.lines.push_back(
        {vertex + begin * towards(direction), vertex + stop * towards(direction), Stroke::extension});
}

// On the other side of the vertex: the leg goes through it.
void add_leg_through(Ink& ink, const Point& vertex, double direction, double from, double radius) {
    const double begin = from > 0.0 ? from - off_outline : 0.0;
    ink.lines.push_back({vertex + begin * towards(direction),
                         vertex - (radius + overshoot) * towards(direction), Stroke::extension});
}

struct Wedge {
    Point vertex;
    double start, sweep, radius;
};

void add_arc_and_words(std::vector<Placing>& ways, Ink ink, const Wedge& w, const std::string& words,
                       double effort) {
    const bool inside = w.sweep * w.radius >= 2.0 * arrow_length + 0.8;
    const double beyond = inside ? 0.0 : 5.0 / w.radius;
    add_arc_lines(ink, w.vertex, w.radius, w.start - beyond, w.sweep + 2.0 * beyond);
    // Arrows along the chord of their own length, so that they lie on the arc.
    const double lean = 0.5 * arrow_length / w.radius, sign = inside ? 1.0 : -1.0;
    const auto tangent = [](double direction) { return Point(-std::sin(direction), -std::cos(direction)); };
    ink.arrows.push_back({w.vertex + w.radius * towards(w.start), -sign * tangent(w.start + sign * lean)});
    ink.arrows.push_back(
        {w.vertex + w.radius * towards(w.start + w.sweep), sign * tangent(w.start + w.sweep - sign * lean)});
    for (const double part : {0.5, 0.35, 0.65, 0.2, 0.8}) {
        const Point way = towards(w.start + part * w.sweep);
        const double room = reach(label_at(words, w.vertex), way);
        for (const double away : {w.radius + 1.0 + room, w.radius - 1.0 - room}) {
            if (away < 0.0) continue;
            Placing made{ink, effort + (away < w.radius ? 0.5 : 0.0) + 2.0 * std::abs(part - 0.5)};
            made.ink.labels.push_back(label_at(words, w.vertex + away * way));
            ways.push_back(std::move(made));
        }
    }
    // beyond either end, for angles too small to hold words
    for (const double end : {w.start - beyond, w.start + w.sweep + beyond}) {
        const double turn = end < w.start + 0.5 * w.sweep ? -1.0 : 1.0;
        const Point way = turn * tangent(end);
        const Point from = w.vertex + w.radius * towards(end);
        Placing made{ink, effort + 3.0};
        const double room = reach(label_at(words, from), way);
        made.ink.labels.push_back(label_at(words, from + (1.2 + room) * way));
        ways.push_back(std::move(made));
    }
}

}  // namespace

std::vector<Placing> radius_ways(const Dimension& d, const OnPaper& paper) {
    std::vector<Placing> ways;
    for (const double part : {0.5, 0.3, 0.7, 0.1, 0.9}) {
        const double direction = d.start + part * d.sweep;
        const Point tip = paper(d.centre) + paper.scale * d.radius * towards(direction);
        const Point free = d.convex ? towards(direction) : Point(-towards(direction));
        for (const double lean : {0.0, 0.35, -0.35, 0.7, -0.7, 1.05, -1.05}) {
            const double c = std::cos(lean), s = std::sin(lean);
            const Point way(c * free.x() - s * free.y(), s * free.x() + c * free.y());
            for (const double length : {5.0, 7.0, 9.5, 12.0, 15.0, 19.0, 24.0, 30.0, 38.0, 48.0, 60.0}) {
                for (const double shelf : {2.0, -2.0}) {
                    if (shelf * way.x() < -0.3 * std::abs(shelf)) continue;  // no hairpins
                    Placing made = leader(tip, way, length, shelf, d.words);
                    made.effort += 6.0 * std::abs(lean) + std::abs(part - 0.5);
                    ways.push_back(std::move(made));
                }
            }
        }
    }
    return ways;
}

std::vector<Placing> angle_ways(const Dimension& d, const OnPaper& paper) {
    std::vector<Placing> ways;
    const Point vertex = paper(d.centre);
    const double k = paper.scale;
    for (const double radius : {7.0, 9.0, 11.0, 13.5, 16.0, 19.0, 22.5, 27.0, 32.0, 38.0, 45.0, 55.0}) {
        Ink ink;
        add_leg(ink, vertex, d.start, k * d.first_from, k * d.first_to, radius);
        add_leg(ink, vertex, d.start + d.sweep, k * d.second_from, k * d.second_to, radius);
        add_arc_and_words(ways, ink, {vertex, d.start, d.sweep, radius}, d.words, 0.1 * radius);
        Ink through;
        add_leg_through(through, vertex, d.start, k * d.first_from, radius);
        add_leg_through(through, vertex, d.start + d.sweep, k * d.second_from, radius);
        add_arc_and_words(ways, through, {vertex, d.start + pi, d.sweep, radius}, d.words,
                          9.0 + 0.1 * radius);
    }
    return ways;
}

}  // namespace overbend::drawing
