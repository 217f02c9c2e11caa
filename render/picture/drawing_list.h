// What is to be drawn, as plain data: filled and stroked paths and text, in the order they are painted.
//
// No library for drawing is needed to make a list, compare two, or write one down; painter.h paints it.
// Units  picture pixels, x to the right, y down; radians.

#pragma once

#include <Eigen/Core>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace overbend::picture {

using Point = Eigen::Vector2d;

// Red, green, blue (sRGB) and opacity, each 0 to 1.
struct Colour {
    double red = 0.0;
    double green = 0.0;
    double blue = 0.0;
    double opacity = 1.0;
};

// A rectangle by its upper left corner.
struct Rect {
    double x = 0.0;
    double y = 0.0;
    double width = 0.0;
    double height = 0.0;
    double right() const { return x + width; }
    double bottom() const { return y + height; }
    Point centre() const { return Point(x + 0.5 * width, y + 0.5 * height); }
};

Rect bounds_of(const std::vector<Point>& points);  // one at least
Rect grown(const Rect& r, double by);              // on all four sides; by may be below zero
bool overlap(const Rect& a, const Rect& b);        // touching edges do not count
bool overlap_any(const Rect& box, const std::vector<Rect>& others);
bool holds(const Rect& outer, const Rect& inner);  // edges may touch
bool holds(const Rect& box, const Point& p);
double distance(const Rect& box, const Point& p);  // 0 within

// Of all places for a box of this size in a room, a step apart, that of the least badness; none where all are
// at 1e300. bad(box, least) may return anything from `least` on as soon as it is sure of that.
template <class Bad>
std::optional<Rect> best_place(const Rect& room, double width, double height, double step, const Bad& bad) {
    std::optional<Rect> best;
    double least = 1e300;
    for (double y = room.y; y + height <= room.bottom(); y += step)
        for (double x = room.x; x + width <= room.right(); x += step) {
            const Rect box{x, y, width, height};
            const double found = bad(box, least);
            if (found < least) least = found, best = box;
        }
    return best;
}

enum class Verb { move, line, curve, close };

// One stretch of a path, to `to`; a curve is a cubic with a handle at either end.
struct Segment {
    Verb verb = Verb::move;
    Point to = Point::Zero();
    Point handle_start = Point::Zero();
    Point handle_end = Point::Zero();
};

using Path = std::vector<Segment>;

// How exactly the edges of a shape are painted. Coarse is enough for hatchings, and for patches whose edges
// are painted over or hardly seen; it takes pixels a third of the time.
enum class Edges { fine, coarse };

struct Shape {
    Path path;
    std::optional<Colour> fill = {};
    std::optional<Colour> stroke = {};
    double line_width = 1.0;
    std::vector<double> dash = {};  // lengths of stroke and gap in turn; empty: unbroken
    std::optional<Rect> clip = {};  // nothing is painted outside it
    Edges edges = Edges::fine;
};

enum class Across { left, middle, right };  // which part of the words lies at `at`
enum class Weight { normal, bold };

struct Text {
    std::string words;         // UTF-8, one line
    Point at = Point::Zero();  // on the base line
    Across across = Across::left;
    double size = 0.0;  // of the font's em, > 0
    Colour colour;
    Weight weight = Weight::normal;
    std::optional<Colour> halo;  // painted around the letters, so that they can be read on anything
};

using Item = std::variant<Shape, Text>;

struct DrawingList {
    std::string title;  // what it shows, for the files that keep one; UTF-8, may be empty
    int width = 0;
    int height = 0;
    Colour background;
    std::vector<Item> items = {};
};

// Paths.
Path polyline(const std::vector<Point>& points);
Path polygon(const std::vector<Point>& points);
Path rectangle(const Rect& r, double corner_radius = 0.0);
Path circle(const Point& centre, double radius);
// An arc about a centre, from one direction to another as they are seen on the picture (y down).
Path arc(const Point& centre, double radius, double from, double to);
void add_stretch(Path& path, const Point& from, const Point& to);  // a line of its own
// Adds an arc to a path that ends at the arc's start.
void add_arc(Path& path, const Point& centre, double radius, double from, double to);

// The same list, so many times as large.
DrawingList scaled(const DrawingList& list, double times);

// Where the base line lies so that the capitals' middle is at y: a fixed part of the size.
double baseline_for_middle(double y, double size);

// The list in words and numbers, one item a line: two lists are the same when these are. For tests.
std::string as_text(const DrawingList& list);

}  // namespace overbend::picture
