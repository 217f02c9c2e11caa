#include "render/picture/flat_drawing.h"

#include <algorithm>
#include <cmath>

#include "render/picture/flags.h"
#include "render/picture/palette.h"
#include "render/picture/text_width.h"
#include "sim/errors.h"

namespace overbend::render {

namespace {

constexpr double degree = 3.14159265358979323846 / 180.0;
constexpr int widest = 16384;  // pixels; what the painter takes

// A flag's words, one or two lines, and what it stands for.
struct Label {
    double at = 0.0;  // mm
    std::vector<std::string> lines;
    Colour colour;
    double from_lower_edge = 0.0;  // mm, where its pole begins; for flags below
};

struct Sheet {
    const FlatSheet* given = nullptr;
    double unit = 0.0;  // the smallest words
    int width = 0, height = 0;
    std::vector<Label> above, below;
    std::vector<Flag> flags_above, flags_below;
    double scale = 0.0;  // pixels a mm
    Rect blank;
    double foot = 0.0;               // where the part below the flags begins
    std::vector<std::string> words;  // the cautions, wrapped
    double margin() const { return 1.5 * unit; }
    double line() const { return 1.35 * unit; }
    double x(double mm) const { return blank.x + scale * mm; }
    double y(double mm) const { return blank.bottom() - scale * mm; }
};

const Colour& ink() {
    return theme_colours(Theme::light).ink;
}
const Colour& muted() {
    return theme_colours(Theme::light).muted;
}
Colour bend_colour(const FlatBendLine& bend) {
    return bend.angle > 0.0 ? okabe_ito::blue : okabe_ito::vermillion;
}

std::string short_number(double value) {
    std::string text = fixed(value, 2);
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
    return text;
}

// ---- what is written

void make_labels(Sheet& s) {
    const FlatSheet& given = *s.given;
    const double name_room = 11.0 * s.unit;
    for (const FlatBendLine& bend : given.bends) {
        const std::string turn =
            short_number(std::abs(bend.angle) / degree) + "\u00b0 " + (bend.angle > 0.0 ? "up" : "down");
        s.above.push_back(
            {bend.at,
             {fitted(bend.name, s.unit, name_room), turn, "R " + short_number(bend.inside_radius)},
             bend_colour(bend)});
        s.below.push_back({bend.at, {fixed(bend.at, 2)}, ink(), 0.0});
    }
    for (const FlatHole& hole : given.holes) {
        const bool round = hole.length == hole.width;
        const std::string size = round
                                     ? "hole " + short_number(hole.width)
                                     : "slot " + short_number(hole.length) + " x " + short_number(hole.width);
        s.below.push_back({hole.at,
                           {size, fixed(hole.at, 2) + " | " + fixed(hole.across, 2)},
                           hole.too_near ? okabe_ito::vermillion : ink(),
                           hole.across});
    }
    std::stable_sort(s.below.begin(), s.below.end(),
                     [](const Label& a, const Label& b) { return a.at < b.at; });
}

double label_width(const Label& label, double unit) {
    double width = 0.0;
    for (const std::string& line : label.lines) width = std::max(width, text_width(line, unit));
    return width + 0.4 * unit;
}

void make_cautions(Sheet& s) {
    const FlatSheet& given = *s.given;
    s.words.clear();
    constexpr std::size_t most = 3;
    for (std::size_t i = 0; i < given.cautions.size(); ++i) {
        const std::size_t left = given.cautions.size() - i;
        if (i + 1 == most && left > 1) {
            s.words.push_back("and " + std::to_string(left) + " cautions more: overbend blank prints them");
            break;
        }
        const double room = s.width - 2.0 * s.margin();
        for (const std::string& line : wrapped("Caution: " + given.cautions[i], s.unit, room, room, 2))
            s.words.push_back(line);
    }
    s.words.push_back(
        "Estimates: prove them by a trial bend. Lengths in mm; up and down as seen on this face.");
}

// ---- where it stands

constexpr int lines_above = 3;  // of a flag
constexpr int lines_below = 2;

std::vector<Flag> flags_of(const Sheet& s, const std::vector<Label>& labels) {
    std::vector<Flag> flags;
    for (const Label& label : labels) flags.push_back({s.scale * label.at, label_width(label, s.unit), 0});
    return flags;
}

// At this scale, the height that everything takes; blank and foot are set.
double set_out(Sheet& s) {
    s.flags_above = flags_of(s, s.above);
    s.flags_below = flags_of(s, s.below);
    const double gap = 0.5 * s.unit;
    const int steps_above = set_steps(s.flags_above, gap), steps_below = set_steps(s.flags_below, gap);
    const double head = s.margin() + 1.4 * s.line() + 2.4 * s.line();
    const double top = head + s.line() * (0.8 + lines_above * steps_above);
    s.blank = {s.margin() + text_width(short_number(s.given->width), s.unit) + 2.0 * s.unit, top,
               s.scale * s.given->length, s.scale * s.given->width};
    const double length_line = 1.8 * s.line();
    s.foot = s.blank.bottom() + s.line() * (0.8 + lines_below * steps_below) + length_line;
    return s.foot + s.line() * (1.8 + static_cast<double>(s.words.size())) + 0.5 * s.margin();
}

// The greatest scale at which everything lies within the picture's width.
double scale_by_width(const Sheet& s) {
    const double left = s.margin() + text_width(short_number(s.given->width), s.unit) + 2.0 * s.unit;
    const double room = s.width - left - s.margin();
    double scale = room / s.given->length;
    for (const std::vector<Label>* labels : {&s.above, &s.below})
        for (const Label& label : *labels)
            scale = std::min(scale, (room - label_width(label, s.unit)) / std::max(label.at, 1e-9));
    return scale;
}

// Fits the sheet to the height, and takes a wider picture where flags stand too close for it.
void fit(Sheet& s) {
    for (; s.width <= widest; s.width += s.width / 4) {
        make_cautions(s);
        const double most = scale_by_width(s);
        if (most <= 0.0) continue;
        constexpr double least_share = 0.1;  // a blank that is drawn smaller than that is no drawing
        for (s.scale = most; s.scale > least_share * most; s.scale *= 0.97)
            if (set_out(s) <= s.height) return;
    }
    throw OutOfRange("flat pattern", "its bend lines stand too close for their words on any picture",
                     "draw fewer bends at once");
}

// ---- painting

void add_text(DrawingList& list, const std::string& words, const Point& at, double size, const Colour& colour,
              Across across = Across::left, Weight weight = Weight::normal) {
    list.items.push_back(Text{words, at, across, size, colour, weight, std::nullopt});
}

void add_line(DrawingList& list, const Point& a, const Point& b, const Colour& colour, double width,
              std::vector<double> dash = {}) {
    list.items.push_back(Shape{polyline({a, b}), std::nullopt, colour, width, std::move(dash), std::nullopt});
}

// A dimension line with a slim arrow at either end.
void add_dimension(DrawingList& list, const Point& a, const Point& b, double unit) {
    add_line(list, a, b, ink(), 0.06 * unit);
    const Point along = (b - a).normalized(), across(-along.y(), along.x());
    for (const auto& [tip, way] : {std::pair(a, along), {b, Point(-along)}})
        list.items.push_back(Shape{polygon({tip, tip + unit * (0.7 * way + 0.15 * across),
                                            tip + unit * (0.7 * way - 0.15 * across)}),
                                   ink(),
                                   std::nullopt,
                                   0.0,
                                   {},
                                   std::nullopt});
}

void paint_head(DrawingList& list, const Sheet& s) {
    const FlatSheet& given = *s.given;
    const double room = s.width - 2.0 * s.margin();
    double y = s.margin() + s.line();
    add_text(list, fitted(given.title + ": flat pattern", 1.4 * s.unit, room, Weight::bold), {s.margin(), y},
             1.4 * s.unit, ink(), Across::left, Weight::bold);
    std::string size =
        given.material + "; blank " + fixed(given.length, 2) + " x " + short_number(given.width) + " mm";
    if (given.mass_g > 0.0) size += ", " + fixed(given.mass_g, 1) + " g";
    y += 1.3 * s.line();
    add_text(list, fitted(size, s.unit, room), {s.margin(), y}, s.unit, ink());
    y += s.line();
    add_text(list, fitted(given.remark, s.unit, room), {s.margin(), y}, s.unit, muted());
}

void paint_blank(DrawingList& list, const Sheet& s) {
    const FlatSheet& given = *s.given;
    const ThemeColours& colours = theme_colours(Theme::light);
    list.items.push_back(Shape{rectangle(s.blank), colours.panel, std::nullopt, 0.0, {}, std::nullopt});
    for (const FlatBendLine& bend : given.bends) {
        const double low = std::max(0.0, bend.at - bend.half_width);
        const double high = std::min(given.length, bend.at + bend.half_width);
        list.items.push_back(Shape{rectangle({s.x(low), s.blank.y, s.scale * (high - low), s.blank.height}),
                                   with_opacity(bend_colour(bend), 0.15),
                                   std::nullopt,
                                   0.0,
                                   {},
                                   std::nullopt});
    }
    for (const FlatHole& hole : given.holes) {
        const Rect box{s.x(hole.at - 0.5 * hole.length), s.y(hole.across + 0.5 * hole.width),
                       s.scale * hole.length, s.scale * hole.width};
        list.items.push_back(Shape{rectangle(box, 0.5 * box.height),
                                   colours.page,
                                   hole.too_near ? okabe_ito::vermillion : ink(),
                                   0.1 * s.unit,
                                   {},
                                   std::nullopt});
    }
    list.items.push_back(Shape{rectangle(s.blank), std::nullopt, ink(), 0.12 * s.unit, {}, std::nullopt});
}

void paint_flags(DrawingList& list, const Sheet& s) {
    const double thin = 0.06 * s.unit, pad = 0.3 * s.unit;
    const std::vector<double> dash_dot = {0.7 * s.unit, 0.25 * s.unit, 0.12 * s.unit, 0.25 * s.unit};
    for (std::size_t i = 0; i < s.above.size(); ++i) {
        const Label& label = s.above[i];
        const double x = s.x(label.at);
        const double bottom = s.blank.y - s.line() * (0.5 + lines_above * s.flags_above[i].step);
        const double top = bottom - lines_above * s.line() + 0.3 * s.unit;
        add_line(list, {x, s.blank.bottom()}, {x, s.blank.y}, label.colour, 1.5 * thin, dash_dot);
        add_line(list, {x, s.blank.y}, {x, top}, label.colour, thin);
        for (std::size_t k = 0; k < label.lines.size(); ++k)
            add_text(list, label.lines[k],
                     {x + pad, baseline_for_middle(top + s.line() * (0.45 + static_cast<double>(k)), s.unit)},
                     s.unit, label.colour);
    }
    for (std::size_t i = 0; i < s.below.size(); ++i) {
        const Label& label = s.below[i];
        const double x = s.x(label.at);
        const double top = s.blank.bottom() + s.line() * (0.5 + lines_below * s.flags_below[i].step);
        const double bottom = top + s.line() * static_cast<double>(label.lines.size()) - 0.2 * s.unit;
        add_line(list, {x, s.y(label.from_lower_edge)}, {x, bottom}, label.colour, thin);
        for (std::size_t k = 0; k < label.lines.size(); ++k)
            add_text(list, label.lines[k],
                     {x + pad, baseline_for_middle(top + s.line() * (0.4 + static_cast<double>(k)), s.unit)},
                     s.unit, label.colour);
    }
}

void paint_dimensions(DrawingList& list, const Sheet& s) {
    const FlatSheet& given = *s.given;
    const double thin = 0.06 * s.unit, y = s.foot - 0.7 * s.line();
    for (const double x : {s.blank.x, s.blank.right()})
        add_line(list, {x, s.blank.bottom()}, {x, y + 0.4 * s.unit}, muted(), thin);
    add_dimension(list, {s.blank.x, y}, {s.blank.right(), y}, s.unit);
    const std::string length = fixed(given.length, 2);
    const double half = 0.5 * text_width(length, s.unit) + 0.4 * s.unit;
    const Point middle(0.5 * (s.blank.x + s.blank.right()), y);
    list.items.push_back(Shape{rectangle({middle.x() - half, y - 0.6 * s.unit, 2.0 * half, 1.2 * s.unit}),
                               list.background,
                               std::nullopt,
                               0.0,
                               {},
                               std::nullopt});
    add_text(list, length, {middle.x(), baseline_for_middle(y, s.unit)}, s.unit, ink(), Across::middle);

    const double x = s.blank.x - s.unit;
    for (const double edge : {s.blank.y, s.blank.bottom()})
        add_line(list, {s.blank.x, edge}, {x - 0.4 * s.unit, edge}, muted(), thin);
    add_dimension(list, {x, s.blank.y}, {x, s.blank.bottom()}, s.unit);
    add_text(list, short_number(given.width),
             {x - 0.6 * s.unit, baseline_for_middle(s.blank.centre().y(), s.unit)}, s.unit, ink(),
             Across::right);
}

// A bar of a round length, about a sixth of the picture's width.
void paint_scale_bar(DrawingList& list, const Sheet& s) {
    const double wanted = s.width / (6.0 * s.scale), power = std::pow(10.0, std::floor(std::log10(wanted)));
    const double length = wanted / power >= 5.0 ? 5.0 * power : wanted / power >= 2.0 ? 2.0 * power : power;
    const double y = s.foot + s.line(), high = 0.3 * s.unit;
    for (int i = 0; i < 2; ++i)
        list.items.push_back(Shape{
            rectangle({s.margin() + 0.5 * i * s.scale * length, y - high, 0.5 * s.scale * length, high}),
            i == 0 ? ink() : list.background,
            ink(),
            0.06 * s.unit,
            {},
            std::nullopt});
    add_text(list, short_number(length) + " mm", {s.margin() + s.scale * length + 0.6 * s.unit, y}, s.unit,
             ink());
}

void paint_foot(DrawingList& list, const Sheet& s) {
    double y = s.foot + 1.2 * s.line();
    for (std::size_t i = 0; i < s.words.size(); ++i) {
        y += s.line();
        add_text(list, s.words[i], {s.margin(), y}, s.unit,
                 i + 1 == s.words.size() ? muted() : okabe_ito::vermillion);
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
    Sheet s;
    s.given = &sheet;
    s.height = height;
    s.width = static_cast<int>(std::lround(height * std::sqrt(2.0)));
    s.unit = height / 44.0;
    make_labels(s);
    fit(s);
    DrawingList list;
    list.width = s.width;
    list.height = s.height;
    list.background = theme_colours(Theme::light).page;
    paint_head(list, s);
    paint_blank(list, s);
    paint_flags(list, s);
    paint_dimensions(list, s);
    paint_scale_bar(list, s);
    paint_foot(list, s);
    return list;
}

}  // namespace overbend::render
