// Ways to draw a length; declared in place_dimensions.h.

#include <algorithm>
#include <cmath>

#include "render/drawing/place_dimensions.h"

namespace overbend::drawing {

using namespace picture;

namespace {

constexpr double least_inside = 2.0 * arrow_length + 0.6;  // mm, with both arrows between
constexpr double stub = 5.5;                               // mm, of a line whose arrows stand outside

// A length on paper: its ends, the way it is measured and the way its line is moved off.
struct Span {
    Point from, to;       // on the thing, where extension lines begin
    Point along, off;     // unit
    double length = 0.0;  // mm on paper
};

Point at_line(const Span& s, const Point& end, double line) {
    return end + (line - s.off.dot(end)) * s.off;
}

// Dimension line at s.off . p = line, with arrows and extension lines.
Ink framed(const Span& s, double line) {
    Ink ink;
    const Point a = at_line(s, s.from, line), b = at_line(s, s.to, line);
    for (const auto& [end, foot] : {std::pair(s.from, a), {s.to, b}}) {
        const Point way = foot - end;
        const double far = way.norm();
        if (far < off_outline + 0.2) continue;
        const Point u = way / far;
        ink.lines.push_back({end + off_outline * u, foot + overshoot * u, Stroke::extension});
    }
    const bool inside = s.length >= least_inside;
    const Point way = inside ? s.along : Point(-s.along);
    ink.arrows.push_back({a, -way});
    ink.arrows.push_back({b, way});
    if (inside) {
        ink.lines.push_back({a, b, Stroke::dimension});
    } else {
        ink.lines.push_back({a - stub * s.along, b + stub * s.along, Stroke::dimension});
    }
    return ink;
}

// The words over the line, between its extension lines or beyond their ends.
void add_beside(std::vector<Placing>& ways, const Span& s, const Ink& frame, double line,
                const std::string& words, double effort) {
    const Point middle = 0.5 * (at_line(s, s.from, line) + at_line(s, s.to, line));
    for (const double sign : {1.0, -1.0}) {
        Label label = label_at(words, middle);
        const bool between = s.length > 2.0 * reach(label, s.along) + 2.0;
        const double away = (between ? 1.1 : overshoot + 0.9) + reach(label, s.off);
        label = label_at(words, middle + sign * away * s.off);
        Placing way{frame, effort + (between ? 0.0 : 3.0) + (sign < 0.0 ? 1.0 : 0.0)};
        way.ink.labels.push_back(label);
        ways.push_back(std::move(way));
    }
}

// The words in a gap of the line: for lengths that stand upright or aslant.
void add_in_gap(std::vector<Placing>& ways, const Span& s, Ink frame, double line, const std::string& words,
                double effort) {
    const Point a = at_line(s, s.from, line), b = at_line(s, s.to, line), middle = 0.5 * (a + b);
    const Label label = label_at(words, middle);
    const double gap = reach(label, s.along) + 0.9;
    if (s.length < 2.0 * (gap + arrow_length + 0.8)) return;
    frame.lines.pop_back();
    frame.lines.push_back({a, middle - gap * s.along, Stroke::dimension});
    frame.lines.push_back({middle + gap * s.along, b, Stroke::dimension});
    frame.labels.push_back(label);
    ways.push_back({frame, effort});
}

// The words over the line's stub beyond one of its arrows.
void add_on_stub(std::vector<Placing>& ways, const Span& s, const Ink& frame, double line,
                 const std::string& words, double effort) {
    const Point a = at_line(s, s.from, line), b = at_line(s, s.to, line);
    const Label size = label_at(words, a);
    for (const double sign : {1.0, -1.0}) {
        const Point end = sign > 0.0 ? b : a;
        const double length = 2.0 * reach(size, s.along) + 1.6;
        Ink ink = frame;
        ink.lines.push_back({end, end + sign * (length + arrow_length) * s.along, Stroke::dimension});
        const Point middle = end + sign * (arrow_length + 0.5 * length + 0.3) * s.along;
        ink.labels.push_back(label_at(words, middle - Point(0.0, 1.1 + reach(size, Point::UnitY()))));
        // its own stub covers the plain one
        for (Line& l : ink.lines)
            if (l.stroke == Stroke::dimension && s.length < least_inside && &l != &ink.lines.back())
                l = sign > 0.0 ? Line{a - stub * s.along, b, Stroke::dimension}
                               : Line{a, b + stub * s.along, Stroke::dimension};
        ways.push_back({ink, effort + 2.0});
    }
}

void add_all(std::vector<Placing>& ways, const Span& s, double line, const std::string& words,
             double effort) {
    const Ink frame = framed(s, line);
    const bool flat = std::abs(s.along.y()) < 1e-9;
    if (!flat) add_in_gap(ways, s, frame, line, words, effort);
    add_beside(ways, s, frame, line, words, effort);
    if (flat) add_on_stub(ways, s, frame, line, words, effort);
}

Span span_of(const Dimension& d, const OnPaper& paper) {
    Span s;
    s.from = paper(d.from);
    s.to = paper(d.to);
    s.along = d.measure == Measure::across    ? Point::UnitX()
              : d.measure == Measure::upright ? Point::UnitY()
                                              : Point((s.to - s.from).normalized());
    if (s.along.dot(s.to - s.from) < 0.0) std::swap(s.from, s.to);
    s.length = s.along.dot(s.to - s.from);
    s.off = Point(-s.along.y(), s.along.x());
    return s;
}

}  // namespace

std::vector<Placing> linear_ways(const Dimension& d, const OnPaper& paper, const Rect& box) {
    std::vector<Placing> ways;
    Span s = span_of(d, paper);
    if (d.measure == Measure::along) {
        const double middle_line = s.off.dot(s.from), half = paper.scale * d.half_thickness;
        for (const double sign : {1.0, -1.0}) {
            Span side = s;
            for (Point* end : {&side.from, &side.to}) *end += sign * half * s.off;
            for (int k = 0; k < 16; ++k)
                add_all(ways, side, middle_line + sign * (half + 6.5 + 2.5 * k), d.words, 1.5 * k);
        }
        return ways;
    }
    for (const double lane : d.lanes) {
        const Point at = paper(d.measure == Measure::upright ? Vec2(lane, 0.0) : Vec2(0.0, lane));
        add_all(ways, s, s.off.dot(at), d.words, 0.0);
    }
    const bool upright = d.measure == Measure::upright;
    const bool low_first = d.beside == Beside::left || d.beside == Beside::above;
    for (const bool low : {low_first, !low_first}) {
        for (int k = 0; k < 20; ++k) {
            const double away = 7.0 + 2.5 * k;
            const Point at = upright ? Point(low ? box.x - away : box.right() + away, 0.0)
                                     : Point(0.0, low ? box.y - away : box.bottom() + away);
            add_all(ways, s, s.off.dot(at), d.words,
                    1.0 * k + (low == low_first ? 0.0 : 8.0) + (d.lanes.empty() ? 0.0 : 6.0));
        }
    }
    return ways;
}

}  // namespace overbend::drawing
