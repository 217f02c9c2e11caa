#include "render/drawing/ink.h"

#include <algorithm>
#include <cmath>

#include "render/picture/text_width.h"

namespace overbend::drawing {

using namespace picture;

namespace {

constexpr double about_words = 0.7;  // mm, free of anything else
constexpr double too_near = 0.9;     // mm, between lines that run side by side
constexpr double together = 1.2;     // mm, for how long they may

double cross(const Point& a, const Point& b) {
    return a.x() * b.y() - a.y() * b.x();
}

bool lines_cross(const Line& l, const Line& m) {
    const Point p = l.b - l.a, q = m.b - m.a, r = m.a - l.a;
    const double d = cross(p, q);
    if (std::abs(d) < 1e-12) return false;
    const double s = cross(r, q) / d, t = cross(r, p) / d;
    const double end = 1e-6;
    return s > end && s < 1.0 - end && t > end && t < 1.0 - end;
}

// Length for which m runs along l, nearer than they may.
double side_by_side(const Line& l, const Line& m) {
    const Point p = l.b - l.a, q = m.b - m.a;
    const double length = p.norm();
    if (length < 1e-9 || q.norm() < 1e-9) return 0.0;
    const Point u = p / length;
    if (std::abs(cross(u, q)) > 0.07 * q.norm()) return 0.0;  // 4 degrees
    const double off = std::min(std::abs(cross(u, m.a - l.a)), std::abs(cross(u, m.b - l.a)));
    if (off > too_near) return 0.0;
    const double s = u.dot(m.a - l.a), t = u.dot(m.b - l.a);
    return std::min(length, std::max(s, t)) - std::max(0.0, std::min(s, t));
}

// Two extension lines on one and the same line are one.
bool shared(const Line& l, const Line& m) {
    if (l.stroke != Stroke::extension || m.stroke != Stroke::extension) return false;
    const Point p = (l.b - l.a).normalized();
    return std::abs(cross(p, m.a - l.a)) < 0.02 && std::abs(cross(p, m.b - l.a)) < 0.02;
}

double crossing_cost(Stroke mine, Stroke other) {
    if (other == Stroke::outline) return mine == Stroke::extension ? 3.0 : 9.0;
    if (other == Stroke::centre) return 0.5;
    if (mine == Stroke::extension && other == Stroke::extension) return 2.0;
    return 5.0;
}

double lines_cost(const Ink& there, const Line& mine) {
    double sum = 0.0;
    for (const Line& other : there.lines) {
        if (shared(other, mine)) continue;
        if (side_by_side(other, mine) > together) return spoilt;
        if (lines_cross(other, mine)) sum += crossing_cost(mine.stroke, other.stroke);
    }
    for (const Label& label : there.labels)
        if (line_meets(grown(label.box, 0.5 * about_words), mine.a, mine.b)) return spoilt;
    return sum;
}

double label_cost(const Ink& there, const Label& mine, const Rect& area) {
    if (!holds(area, mine.box)) return spoilt;
    const Rect wide = grown(mine.box, about_words);
    for (const Label& other : there.labels)
        if (overlap(wide, other.box)) return spoilt;
    for (const Line& other : there.lines)
        if (line_meets(wide, other.a, other.b)) return spoilt;
    for (const Arrow& arrow : there.arrows)
        if (line_meets(wide, arrow.tip, arrow.tip - arrow_length * arrow.way)) return spoilt;
    return 0.0;
}

}  // namespace

void add(Ink& ink, const Ink& more) {
    ink.lines.insert(ink.lines.end(), more.lines.begin(), more.lines.end());
    ink.arrows.insert(ink.arrows.end(), more.arrows.begin(), more.arrows.end());
    ink.labels.insert(ink.labels.end(), more.labels.begin(), more.labels.end());
}

Label label_at(const std::string& words, const Point& middle) {
    const double width = text_width(words, word_size), height = 0.76 * word_size;
    return {words, middle, {middle.x() - 0.5 * width, middle.y() - 0.5 * height, width, height}};
}

double reach(const Label& label, const Point& way) {
    return 0.5 * (std::abs(way.x()) * label.box.width + std::abs(way.y()) * label.box.height);
}

bool line_meets(const Rect& box, const Point& a, const Point& b) {
    double low = 0.0, high = 1.0;  // the part of the line that is in the box
    const Point d = b - a;
    const double from[2] = {box.x, box.y}, to[2] = {box.right(), box.bottom()};
    for (int i = 0; i < 2; ++i) {
        if (std::abs(d[i]) < 1e-12) {
            if (a[i] <= from[i] || a[i] >= to[i]) return false;
            continue;
        }
        double s = (from[i] - a[i]) / d[i], t = (to[i] - a[i]) / d[i];
        if (s > t) std::swap(s, t);
        low = std::max(low, s);
        high = std::min(high, t);
    }
    return low < high;
}

double cost(const Ink& there, const Ink& more, const Rect& area) {
    double sum = 0.0;
    for (const Label& label : more.labels) sum += label_cost(there, label, area);
    for (const Label& label : more.labels)
        for (const Line& line : more.lines)
            if (line_meets(label.box, line.a, line.b)) sum += spoilt;
    for (const Line& line : more.lines) {
        if (sum >= spoilt) return sum;
        for (const Point& end : {line.a, line.b})
            if (!holds(area, end)) return spoilt;
        sum += lines_cost(there, line);
    }
    for (const Arrow& arrow : more.arrows)
        for (const Label& label : there.labels)
            if (line_meets(grown(label.box, about_words), arrow.tip, arrow.tip - arrow_length * arrow.way))
                return spoilt;
    return sum;
}

}  // namespace overbend::drawing
