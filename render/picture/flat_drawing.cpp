#include "render/picture/flat_drawing.h"

#include <algorithm>

#include "render/picture/flat_layout.h"
#include "render/picture/marks.h"
#include "render/picture/palette.h"
#include "render/picture/text_width.h"
#include "sim/errors.h"

namespace overbend::picture {

namespace {

const Colour& muted() {
    return theme_colours(Theme::light).muted;
}
// A dimension line with a slim arrow at either end; from outside where there is no room between.
void add_dimension(DrawingList& list, const Point& a, const Point& b, double unit) {
    add_line(list, a, b, flat_ink(), 0.06 * unit);
    const double inwards = (b - a).norm() < 1.8 * unit ? -1.0 : 1.0;
    const Point along = inwards * (b - a).normalized(), across(-along.y(), along.x());
    for (const auto& [tip, way] : {std::pair(a, along), {b, Point(-along)}})
        add_fill(list,
                 polygon({tip, tip + unit * (0.7 * way + 0.15 * across),
                          tip + unit * (0.7 * way - 0.15 * across)}),
                 flat_ink());
}

void paint_head(DrawingList& list, const FlatLayout& s) {
    const FlatSheet& given = *s.given;
    const double room = s.width - 2.0 * s.margin();
    double y = s.margin() + s.line();
    add_text(list, fitted(given.title + ": flat pattern", 1.4 * s.unit, room, Weight::bold), {s.margin(), y},
             1.4 * s.unit, flat_ink(), Across::left, Weight::bold);
    std::string size =
        given.material + "; blank " + fixed(given.length, 2) + " x " + short_number(given.width) + " mm";
    if (given.mass_g > 0.0) size += ", " + fixed(given.mass_g, 1) + " g";
    y += 1.3 * s.line();
    add_text(list, fitted(size, s.unit, room), {s.margin(), y}, s.unit, flat_ink());
    y += s.line();
    add_text(list, fitted(given.remark, s.unit, room), {s.margin(), y}, s.unit, muted());
}

void paint_blank(DrawingList& list, const FlatLayout& s) {
    const FlatSheet& given = *s.given;
    const ThemeColours& colours = theme_colours(Theme::light);
    add_fill(list, rectangle(s.blank), colours.panel);
    for (const FlatBendLine& bend : given.bends) {
        const double low = std::max(0.0, bend.at - bend.half_width);
        const double high = std::min(given.length, bend.at + bend.half_width);
        add_fill(list, rectangle({s.x(low), s.blank.y, s.scale * (high - low), s.blank.height}),
                 with_opacity(bend_colour(bend), 0.15));
    }
    for (const FlatHole& hole : given.holes) {
        const Rect box{s.x(hole.at - 0.5 * hole.length), s.y(hole.across + 0.5 * hole.width),
                       s.scale * hole.length, s.scale * hole.width};
        add_shape(list, rectangle(box, 0.5 * std::min(box.width, box.height)), colours.page,
                  hole.too_near ? alarm_colour() : flat_ink(), 0.1 * s.unit);
    }
    add_line(list, rectangle(s.blank), flat_ink(), 0.12 * s.unit);
}

void paint_flags(DrawingList& list, const FlatLayout& s) {
    const double thin = 0.06 * s.unit, pad = 0.3 * s.unit;
    const std::vector<double> dash_dot = {0.7 * s.unit, 0.25 * s.unit, 0.12 * s.unit, 0.25 * s.unit};
    for (std::size_t i = 0; i < s.above.size(); ++i) {
        const FlatLabel& label = s.above[i];
        const double x = s.x(label.at);
        const double bottom = s.blank.y - s.line() * (0.5 + s.lines_above * s.flags_above[i].step);
        const double top = bottom - s.lines_above * s.line() + 0.3 * s.unit;
        add_line(list, {x, s.blank.bottom()}, {x, s.blank.y}, label.colour, 1.5 * thin, dash_dot);
        add_line(list, {x, s.blank.y}, {x, top}, label.colour, thin);
        for (std::size_t k = 0; k < label.lines.size(); ++k)
            add_text_on_middle(list, label.lines[k],
                               {x + pad, top + s.line() * (0.45 + static_cast<double>(k))}, s.unit,
                               label.colour);
    }
    for (std::size_t i = 0; i < s.below.size(); ++i) {
        const FlatLabel& label = s.below[i];
        const double x = s.x(label.at);
        const double top = s.blank.bottom() + s.line() * (0.5 + s.lines_below * s.flags_below[i].step);
        const double bottom = top + s.line() * static_cast<double>(label.lines.size()) - 0.2 * s.unit;
        add_line(list, {x, s.y(label.from_lower_edge)}, {x, bottom}, label.colour, thin);
        // Where words reach over the line of the blank's right end, that is broken.
        add_fill(list,
                 rectangle({x + 0.5 * pad, top - 0.1 * s.unit, s.flags_below[i].width,
                            bottom - top + 0.2 * s.unit}),
                 list.background);
        for (std::size_t k = 0; k < label.lines.size(); ++k)
            add_text_on_middle(list, label.lines[k],
                               {x + pad, top + s.line() * (0.4 + static_cast<double>(k))}, s.unit,
                               label.colour);
    }
}

double length_line(const FlatLayout& s) {
    return s.foot - 0.7 * s.line();
}

void paint_end_lines(DrawingList& list, const FlatLayout& s) {
    for (const double x : {s.blank.x, s.blank.right()})
        add_line(list, {x, s.blank.bottom()}, {x, length_line(s) + 0.4 * s.unit}, muted(), 0.06 * s.unit);
}

void paint_dimensions(DrawingList& list, const FlatLayout& s) {
    const FlatSheet& given = *s.given;
    const double thin = 0.06 * s.unit, y = length_line(s);
    add_dimension(list, {s.blank.x, y}, {s.blank.right(), y}, s.unit);
    const std::string length = fixed(given.length, 2);
    const double half = 0.5 * text_width(length, s.unit) + 0.4 * s.unit;
    const bool beside = s.blank.width < 2.0 * half + 2.0 * s.unit;
    const Point middle((beside ? s.blank.right() + half + s.unit : s.blank.centre().x()), y);
    add_fill(list, rectangle({middle.x() - half, y - 0.6 * s.unit, 2.0 * half, 1.2 * s.unit}),
             list.background);
    add_text_on_middle(list, length, {middle.x(), y}, s.unit, flat_ink(), Across::middle);

    const double x = s.blank.x - s.unit;
    for (const double edge : {s.blank.y, s.blank.bottom()})
        add_line(list, {s.blank.x, edge}, {x - 0.4 * s.unit, edge}, muted(), thin);
    add_dimension(list, {x, s.blank.y}, {x, s.blank.bottom()}, s.unit);
    add_text_on_middle(list, short_number(given.width), {x - 0.6 * s.unit, s.blank.centre().y()}, s.unit,
                       flat_ink(), Across::right);
}

void paint_foot(DrawingList& list, const FlatLayout& s) {
    double y = s.bottom + 1.2 * s.line();
    for (std::size_t i = 0; i < s.words.size(); ++i) {
        y += s.line();
        add_text(list, s.words[i], {s.margin(), y}, s.unit,
                 i + 1 == s.words.size() ? muted() : alarm_colour());
    }
}

void check(const FlatSheet& sheet, int height) {
    if (height < 400 || height > 4000)
        throw OutOfRange("picture height", std::to_string(height) + " px", "give 400 to 4000");
    if (!(sheet.length > 0.0 && sheet.width > 0.0))
        throw OutOfRange("flat pattern", "a blank without length or width", "give more than 0 mm");
}

}  // namespace

DrawingList draw_flat(const FlatSheet& sheet, int height) {
    check(sheet, height);
    const FlatLayout s = lay_out_flat(sheet, height);
    DrawingList list{"", s.width, s.height, theme_colours(Theme::light).page};
    paint_head(list, s);
    paint_blank(list, s);
    paint_end_lines(list, s);
    paint_flags(list, s);
    paint_dimensions(list, s);
    add_scale_bar(list, {s.margin(), s.bottom + s.line()}, s.scale, s.width / 6.0, s.unit);
    paint_foot(list, s);
    return list;
}

}  // namespace overbend::picture
