#include "render/picture/profile_drawing.h"

#include <algorithm>
#include <cmath>

#include "render/picture/cautions.h"
#include "render/picture/marks.h"
#include "render/picture/palette.h"
#include "render/picture/text_width.h"
#include "sim/errors.h"
#include "sim/words.h"

namespace overbend::picture {

namespace {

constexpr double paper = 1.41421356237;  // width over height, ISO 216

const ThemeColours& colours() {
    return theme_colours(Theme::light);
}

struct ProfileLayout {
    double unit = 0.0;             // size of the words
    Rect stage;                    // where the profile is drawn
    double scale = 1.0;            // px a mm
    Point middle = Point::Zero();  // mm, in the middle of the stage
    double enlarged = 1.0;         // spikes, over their deviation
    Point on_page(const Point& p) const {
        return stage.centre() + scale * Point(p.x() - middle.x(), middle.y() - p.y());
    }
};

double greatest(const ProfileSheet& sheet) {
    double most = 0.0;
    for (const ProfilePlace& p : sheet.places) most = std::max(most, (p.made - p.drawn).norm());
    return most;
}

ProfileLayout lay_out_profile(const ProfileSheet& sheet, int height) {
    ProfileLayout l;
    l.unit = height / 42.0;
    const double width = paper * height;
    l.stage = {1.5 * l.unit, 6.5 * l.unit, width - 3.0 * l.unit, height - 12.5 * l.unit};
    Point low = sheet.drawn.front(), high = low;
    for (const std::vector<Point>* line : {&sheet.drawn, &sheet.made})
        for (const Point& p : *line) low = low.cwiseMin(p), high = high.cwiseMax(p);
    const Point size = (high - low).cwiseMax(Point::Constant(sheet.thickness));
    // a margin for the band, the spikes and the words
    const double aside = 3.0 * l.unit;
    l.scale = std::min((l.stage.width - 2.0 * aside) / size.x(), (l.stage.height - 2.0 * aside) / size.y());
    l.middle = 0.5 * (low + high);
    const double most = greatest(sheet);
    if (most > 0.0) l.enlarged = std::max(1.0, rounded_down(2.0 * l.unit / (l.scale * most)));
    return l;
}

Path on_page(const ProfileLayout& l, const std::vector<Point>& line) {
    std::vector<Point> points;
    for (const Point& p : line) points.push_back(l.on_page(p));
    return polyline(points);
}

void paint_profiles(DrawingList& list, const ProfileSheet& sheet, const ProfileLayout& l) {
    add_line(list, on_page(l, sheet.drawn), with_opacity(okabe_ito::sky_blue, 0.35),
             std::max(l.scale * sheet.thickness, 0.3 * l.unit));
    add_line(list, on_page(l, sheet.made), colours().ink, 0.1 * l.unit);
    for (const ProfilePlace& p : sheet.places) {
        const Point from = l.on_page(p.drawn), way = l.on_page(p.made) - from;
        add_line(list, from, from + l.enlarged * way, okabe_ito::vermillion, 0.12 * l.unit);
    }
}

void circle_worst(DrawingList& list, const ProfileSheet& sheet, const ProfileLayout& l) {
    for (const ProfilePlace& p : sheet.places) {
        if (!p.worst) continue;
        const Point from = l.on_page(p.drawn), spike = l.enlarged * (l.on_page(p.made) - from);
        add_line(list, circle(from + 0.5 * spike, 0.5 * spike.norm() + 0.6 * l.unit), colours().ink,
                 0.08 * l.unit, {0.4 * l.unit, 0.3 * l.unit});
    }
}

// "Largest deviations (circled): flat 4 by 0.09 mm, bend 'lip' by 0.08 mm."
std::string worst_words(const ProfileSheet& sheet) {
    std::string told;
    for (const ProfilePlace& p : sheet.places)
        if (p.worst)
            told += words("%s%s by %.2f mm", told.empty() ? "Largest deviations (circled): " : ", ",
                          p.name.c_str(), (p.made - p.drawn).norm());
    return told;
}

void paint_words(DrawingList& list, const ProfileSheet& sheet, const ProfileLayout& l) {
    const double left = l.stage.x, room = l.stage.width;
    add_text(list,
             fitted(sheet.title + ": the finished profile on the drawing", 1.4 * l.unit, room, Weight::bold),
             {left, 2.4 * l.unit}, 1.4 * l.unit, colours().ink, Across::left, Weight::bold);
    add_text(list, fitted(sheet.remark, l.unit, room), {left, 4.2 * l.unit}, l.unit, colours().ink);
    add_text(list, fitted(worst_words(sheet), l.unit, room), {left, 5.8 * l.unit}, l.unit, colours().ink);

    double y = list.height - 4.2 * l.unit;
    const double box = 1.6 * l.unit, step = 1.5 * l.unit;
    add_scale_bar(list, {left, y}, l.scale, list.width / 6.0, l.unit);
    double x = left + 0.3 * room;
    add_line(list, {x, y - 0.35 * l.unit}, {x + box, y - 0.35 * l.unit},
             with_opacity(okabe_ito::sky_blue, 0.35), 0.7 * l.unit);
    add_text(list, "drawing", {x + 1.3 * box, y}, l.unit, colours().ink);
    x += 0.17 * room;
    add_line(list, {x, y - 0.35 * l.unit}, {x + box, y - 0.35 * l.unit}, colours().ink, 0.1 * l.unit);
    add_text(list, "finished, mid-line", {x + 1.3 * box, y}, l.unit, colours().ink);
    x += 0.24 * room;
    add_line(list, {x, y - 0.35 * l.unit}, {x + box, y - 0.35 * l.unit}, okabe_ito::vermillion,
             0.12 * l.unit);
    add_text(list, words("deviation \u00d7 %g", l.enlarged), {x + 1.3 * box, y}, l.unit, colours().ink);
    y += 1.4 * step;
    add_text(list, fitted(estimate_words() + " Lengths in mm.", l.unit, room), {left, y}, l.unit,
             colours().muted);
}

void check(const ProfileSheet& sheet, int height) {
    if (height < 400 || height > 4000)
        throw OutOfRange("picture height", std::to_string(height) + " px", "give 400 to 4000");
    if (sheet.drawn.size() < 2 || sheet.made.size() < 2 || !(sheet.thickness > 0.0))
        throw OutOfRange("profile", "it has no length or no thickness", "give at least two points");
}

}  // namespace

DrawingList draw_profile(const ProfileSheet& sheet, int height) {
    check(sheet, height);
    const ProfileLayout l = lay_out_profile(sheet, height);
    DrawingList list{"", static_cast<int>(std::lround(paper * height)), height, colours().page};
    paint_profiles(list, sheet, l);
    circle_worst(list, sheet, l);
    paint_words(list, sheet, l);
    return list;
}

}  // namespace overbend::picture
