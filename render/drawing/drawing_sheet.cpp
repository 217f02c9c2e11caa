#include "render/drawing/drawing_sheet.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "render/drawing/hatch.h"
#include "render/drawing/place_dimensions.h"
#include "render/drawing/title_block.h"
#include "render/picture/marks.h"
#include "render/picture/view.h"
#include "sim/errors.h"

namespace overbend::drawing {

using namespace picture;

namespace {

using tool::Piece;

constexpr double scales[] = {10.0, 5.0, 2.0, 1.0, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01};
constexpr PaperSize papers[] = {{"A4", 297, 210}, {"A4", 210, 297}, {"A3", 420, 297}};
constexpr double hatch_width = 0.18;  // mm
constexpr Colour tint{0.0, 114 / 255.0, 178 / 255.0, 0.12};

std::vector<Point> sampled(const std::vector<Piece>& outline, const OnPaper& paper) {
    std::vector<Point> points;
    for (const Piece& piece : outline) {
        points.push_back(paper(piece.start));
        if (!piece.is_arc()) continue;
        const int count = std::max(2, static_cast<int>(std::ceil(std::abs(piece.sweep) / 0.15)));
        const Vec2 arm = piece.start - piece.centre;
        for (int i = 1; i < count; ++i) {
            const double turn = piece.sweep * i / count, c = std::cos(turn), s = std::sin(turn);
            points.push_back(
                paper(piece.centre + Vec2(c * arm.x() - s * arm.y(), s * arm.x() + c * arm.y())));
        }
    }
    return points;
}

std::vector<std::vector<Point>> polygons(const DrawingSheet& sheet, const OnPaper& paper) {
    std::vector<std::vector<Point>> all;
    for (const std::vector<Piece>& outline : sheet.outlines) all.push_back(sampled(outline, paper));
    return all;
}

Rect outline_box(const DrawingSheet& sheet, const OnPaper& paper) {
    std::vector<Point> points;
    for (const std::vector<Point>& polygon : polygons(sheet, paper))
        points.insert(points.end(), polygon.begin(), polygon.end());
    return bounds_of(points);
}

// What the dimensions must avoid.
Ink view_ink(const DrawingSheet& sheet, const OnPaper& paper) {
    Ink ink;
    for (const std::vector<Point>& polygon : polygons(sheet, paper))
        for (std::size_t i = 0; i < polygon.size(); ++i)
            ink.lines.push_back({polygon[i], polygon[(i + 1) % polygon.size()], Stroke::outline});
    for (const ViewLine& line : sheet.lines)
        ink.lines.push_back({paper(line.a), paper(line.b), Stroke::centre});
    return ink;
}

Rect ink_box(const Ink& ink, const Rect& outline) {
    Point low(outline.x, outline.y), high(outline.right(), outline.bottom());
    const auto take = [&](const Point& p) { low = low.cwiseMin(p), high = high.cwiseMax(p); };
    for (const Line& line : ink.lines) take(line.a), take(line.b);
    for (const Label& label : ink.labels)
        take({label.box.x, label.box.y}), take({label.box.right(), label.box.bottom()});
    return {low.x(), low.y(), high.x() - low.x(), high.y() - low.y()};
}

struct Layout {
    PaperSize paper;
    OnPaper on_paper;
    Placed placed;
};

// Centred on the area with its dimensions, or nothing where it has no room.
std::optional<Layout> laid_out(const DrawingSheet& sheet, const PaperSize& paper, double scale) {
    const Rect area = view_area(paper, sheet);
    Layout layout{paper, {Point::Zero(), scale}, {}};
    const Rect at_origin = outline_box(sheet, layout.on_paper);
    if (area.width <= 0.0 || at_origin.width > area.width || at_origin.height > area.height)
        return std::nullopt;
    Point shift = area.centre() - at_origin.centre();
    // once with as much room as it likes, then where that brings the middle of it all
    for (int round = 0; round < 3; ++round) {
        layout.on_paper.origin += shift;
        const Rect box = outline_box(sheet, layout.on_paper);
        layout.placed = place_dimensions(sheet.dimensions, layout.on_paper, view_ink(sheet, layout.on_paper),
                                         box, round == 0 ? grown(area, 60.0) : area);
        const Rect all = ink_box(layout.placed.ink, box);
        shift = area.centre() - all.centre();
        if (round > 0 && holds(area, all)) break;
        if (round == 0 && (all.width > area.width || all.height > area.height)) shift = Point::Zero();
    }
    const Rect box = outline_box(sheet, layout.on_paper);
    if (!holds(area, ink_box(layout.placed.ink, box))) return std::nullopt;
    return layout;
}

// The largest scale at which all dimensions fit; where that is less than a fifth of the largest that the
// outline has room at, what lacks least.
std::optional<Layout> best_on(const DrawingSheet& sheet, const std::vector<PaperSize>& choice) {
    std::optional<Layout> best;
    double largest = 0.0;
    for (const double scale : scales) {
        if (scale < 0.19 * largest) break;
        for (const PaperSize& paper : choice) {
            std::optional<Layout> layout = laid_out(sheet, paper, scale);
            if (!layout) continue;
            largest = std::max(largest, scale);
            if (layout->placed.missing.empty()) return layout;
            if (!best || layout->placed.missing.size() < best->placed.missing.size()) best = layout;
        }
    }
    return best;
}

Layout chosen(const DrawingSheet& sheet) {
    std::optional<Layout> small = best_on(sheet, {papers[0], papers[1]});
    if (small && small->placed.missing.empty() && small->on_paper.scale >= 1.0) return *small;
    std::optional<Layout> large = best_on(sheet, {papers[2]});
    if (!small && !large)
        throw OutOfRange("drawing", "it is too large for any sheet", "give something of at most 20 m");
    if (!large) return *small;
    if (!small || large->placed.missing.size() < small->placed.missing.size()) return *large;
    return large->on_paper.scale > small->on_paper.scale &&
                   large->placed.missing.size() == small->placed.missing.size()
               ? *large
               : *small;
}

std::vector<double> dash_of(ViewLine::Kind kind) {
    if (kind == ViewLine::Kind::axis) return {6.0, 1.2, 0.6, 1.2};
    if (kind == ViewLine::Kind::bend_up) return {5.0, 1.2, 0.6, 1.2, 0.6, 1.2};
    return kind == ViewLine::Kind::bend_down ? std::vector<double>{2.5, 1.2} : std::vector<double>();
}

void paint_ink(DrawingList& list, const Ink& ink) {
    for (const Line& line : ink.lines) add_line(list, line.a, line.b, black, thin);
    for (const Arrow& arrow : ink.arrows) {
        const Point side(-arrow.way.y(), arrow.way.x()), back = arrow.tip - arrow_length * arrow.way;
        add_fill(list, polygon({arrow.tip, back + 0.45 * side, back - 0.45 * side}), black);
    }
    for (const Label& label : ink.labels)
        add_text_on_middle(list, label.words, label.middle, word_size, black, Across::middle);
}

// All hatch lines as one path.
void paint_hatch(DrawingList& list, const std::vector<Line>& lines) {
    Path path;
    for (const Line& line : lines) add_stretch(path, line.a, line.b);
    if (!path.empty()) add_line(list, std::move(path), black, hatch_width);
}

double hatch_distance(const Rect& box) {
    return std::clamp(0.04 * std::min(box.width, box.height), 1.4, 3.5);
}

void check(const DrawingSheet& sheet) {
    if (sheet.outlines.empty() || sheet.outlines.front().size() < 2)
        throw OutOfRange("drawing", "it has no outline", "give one of at least two lines or arcs");
    for (const std::vector<std::string>& row : sheet.table.rows)
        if (row.size() != sheet.table.heads.size())
            throw OutOfRange("drawing", "a row of its table has more or fewer cells than its head",
                             "give one cell for each column");
}

}  // namespace

std::string scale_words(double scale) {
    return scale >= 1.0 ? std::to_string(std::lround(scale)) + ":1"
                        : "1:" + std::to_string(std::lround(1.0 / scale));
}

DrawnSheet draw_sheet(const DrawingSheet& given) {
    check(given);
    DrawingSheet sheet = given;
    Layout layout = chosen(sheet);
    DrawnSheet drawn;
    for (const int i : layout.placed.missing) drawn.missing.push_back(sheet.dimensions[i].words);
    if (!drawn.missing.empty()) {
        std::string told = "Dimensions that do not fit:";
        for (const std::string& words : drawn.missing) told += " " + words + ";";
        told.back() = '.';
        sheet.notes.push_back(told);
        layout = chosen(sheet);  // the note takes room
    }
    const OnPaper& paper = layout.on_paper;
    drawn.paper = layout.paper.name;
    drawn.scale = paper.scale;
    drawn.scale_words = scale_words(paper.scale);
    drawn.origin = paper.origin;
    DrawingList& list = drawn.list;
    list = {sheet.title + ": " + sheet.name, layout.paper.width, layout.paper.height, {1.0, 1.0, 1.0, 1.0}};
    for (const auto& [a, b] : sheet.bands) {
        const Point p = paper(a), q = paper(b), low = p.cwiseMin(q), size = (p - q).cwiseAbs();
        add_fill(list, rectangle({low.x(), low.y(), size.x(), size.y()}), tint);
    }
    if (sheet.fill == Fill::hatched)
        paint_hatch(list, hatched(polygons(sheet, paper), hatch_distance(outline_box(sheet, paper)),
                                  layout.placed.ink.labels));
    for (const ViewLine& line : sheet.lines)
        add_line(list, paper(line.a), paper(line.b), black, thin, dash_of(line.kind));
    for (const std::vector<Piece>& outline : sheet.outlines)
        add_line(list, outline_path(outline, paper.origin, paper.scale), black, thick);
    paint_ink(list, layout.placed.ink);
    paint_surroundings(list, layout.paper, sheet, drawn.scale_words);
    return drawn;
}

}  // namespace overbend::drawing
