#include "tests/picture/words_ground.h"

#include <algorithm>
#include <cmath>

#include "render/picture/palette.h"

namespace overbend::tests {

namespace {

using picture::Point;
using picture::Rect;
using picture::Segment;
using picture::Shape;
using picture::Verb;

// The path as points, curves by a few of theirs; a close goes back to the start.
std::vector<std::vector<Point>> lines_of(const picture::Path& path) {
    std::vector<std::vector<Point>> lines;
    for (const Segment& s : path) {
        if (s.verb == Verb::move) lines.push_back({s.to});
        if (s.verb == Verb::line) lines.back().push_back(s.to);
        if (s.verb == Verb::close) lines.back().push_back(lines.back().front());
        if (s.verb != Verb::curve) continue;
        const Point from = lines.back().back();
        for (int i = 1; i <= 8; ++i) {
            const double t = i / 8.0, r = 1.0 - t;
            lines.back().push_back(r * r * r * from + 3.0 * r * r * t * s.handle_start +
                                   3.0 * r * t * t * s.handle_end + t * t * t * s.to);
        }
    }
    return lines;
}

bool holds_point(const Rect& box, const Point& p) {
    return p.x() > box.x && p.x() < box.right() && p.y() > box.y && p.y() < box.bottom();
}

// Whether a line comes into a box: by points a pixel apart.
bool crosses(const std::vector<Point>& line, const Rect& box) {
    for (size_t i = 0; i + 1 < line.size(); ++i) {
        const int parts = 1 + static_cast<int>((line[i + 1] - line[i]).norm());
        for (int k = 0; k <= parts; ++k)
            if (holds_point(box, line[i] + (line[i + 1] - line[i]) * k / parts)) return true;
    }
    return line.size() == 1 && holds_point(box, line[0]);
}

bool winds_round(const std::vector<Point>& closed, const Point& p) {
    bool in = false;
    for (size_t i = 0, j = closed.size() - 1; i < closed.size(); j = i++) {
        const Point& a = closed[i];
        const Point& b = closed[j];
        if ((a.y() > p.y()) != (b.y() > p.y()) &&
            p.x() < a.x() + (b.x() - a.x()) * (p.y() - a.y()) / (b.y() - a.y()))
            in = !in;
    }
    return in;
}

}  // namespace

double contrast(const picture::Colour& a, const picture::Colour& b) {
    const double low = std::min(picture::luminance(a), picture::luminance(b));
    const double high = std::max(picture::luminance(a), picture::luminance(b));
    return (high + 0.05) / (low + 0.05);
}

Grounds::Grounds(const picture::DrawingList& list, const picture::Colour& page) : list_(list) {
    picture::DrawingList bare = list;
    bare.background = picture::mixed(page, list.background, list.background.opacity);
    bare.background.opacity = 1.0;
    bare.items.clear();
    for (const picture::Item& item : list.items)
        if (std::holds_alternative<Shape>(item)) bare.items.push_back(item);
    pixels_ = paint(bare);
}

double Grounds::least(int index) const {
    const picture::Text& text = std::get<picture::Text>(list_.items[index]);
    const Rect box = painted_box(text);
    double least = 1e300;
    std::uint32_t last = 0x01000000;
    for (int y = static_cast<int>(box.y); y < box.bottom(); ++y)
        for (int x = static_cast<int>(box.x); x < box.right(); ++x) {
            if (x < 0 || y < 0 || x >= pixels_.width || y >= pixels_.height) continue;
            const std::uint8_t* p = pixels_.bgra.data() + size_t{4} * (size_t{1} * y * pixels_.width + x);
            const std::uint32_t here = static_cast<std::uint32_t>(p[2] << 16 | p[1] << 8 | p[0]);
            if (here == last) continue;
            last = here;
            picture::Colour ground{p[2] / 255.0, p[1] / 255.0, p[0] / 255.0, 1.0};
            if (text.halo) {
                picture::Colour halo = *text.halo;
                halo.opacity = 1.0;
                ground = picture::mixed(ground, halo, text.halo->opacity);
            }
            least = std::min(least, contrast(text.colour, ground));
        }
    return least;
}

Covers::Covers(const picture::DrawingList& list) {
    for (size_t i = 0; i < list.items.size(); ++i) {
        const Shape* shape = std::get_if<Shape>(&list.items[i]);
        if (!shape) continue;
        Cover cover{static_cast<int>(i), shape, {1e300, 1e300, 0.0, 0.0}};
        Point low(1e300, 1e300);
        Point high(-1e300, -1e300);
        for (const Segment& s : shape->path) {
            if (s.verb == Verb::close) continue;
            for (const Point& p : {s.to, s.handle_start, s.handle_end}) {
                low = low.cwiseMin(p);
                high = high.cwiseMax(p);
            }
        }
        const double half = shape->stroke ? 0.5 * shape->line_width : 0.0;
        cover.box = {low.x() - half, low.y() - half, high.x() - low.x() + 2.0 * half,
                     high.y() - low.y() + 2.0 * half};
        covers_.push_back(cover);
    }
}

bool Covers::over(int index, const Rect& box) const {
    for (const Cover& cover : covers_) {
        const Shape& shape = *cover.shape;
        if (cover.index < index || !overlap(cover.box, box) || (shape.clip && !overlap(*shape.clip, box)))
            continue;
        const Rect wide = shape.stroke ? grown(box, 0.5 * shape.line_width) : box;
        for (const std::vector<Point>& line : lines_of(shape.path)) {
            if (crosses(line, wide)) return true;
            if (shape.fill && winds_round(line, box.centre())) return true;
        }
    }
    return false;
}

}  // namespace overbend::tests
