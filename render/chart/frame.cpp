#include "render/chart/frame.h"

#include <algorithm>
#include <cmath>

#include "render/picture/marks.h"
#include "render/picture/text_width.h"
#include "sim/errors.h"

namespace overbend::chart {

using namespace picture;

namespace {

constexpr double title_size = 1.2;  // units
constexpr double row = 1.5;         // from line to line
constexpr double sample = 2.4;      // length of a curve's sample in the key

// Rows of the key, as indices of their first entries; a row holds what fits side by side.
std::vector<std::size_t> key_rows(const std::vector<KeyEntry>& key, double width, double u) {
    std::vector<std::size_t> first;
    double x = 0.0;
    for (std::size_t i = 0; i < key.size(); ++i) {
        const double wide = (sample + 2.2) * u + text_width(key[i].words, u);
        if (first.empty() || x + wide > width) first.push_back(i), x = 0.0;
        x += wide;
    }
    return first;
}

void add_key(DrawingList& list, const ChartInfo& info, const ChartLook& look, const Point& at, double width) {
    const double u = look.unit;
    const std::vector<std::size_t> rows = key_rows(info.key, width, u);
    for (std::size_t r = 0; r < rows.size(); ++r) {
        const std::size_t end = r + 1 < rows.size() ? rows[r + 1] : info.key.size();
        Point p = at + Point(0.0, static_cast<double>(r) * row * u);
        for (std::size_t i = rows[r]; i < end; ++i) {
            const KeyEntry& entry = info.key[i];
            const double middle = p.y() - 0.36 * u;
            add_line(list, {p.x(), middle}, {p.x() + sample * u, middle}, entry.curve.colour,
                     entry.curve.width, entry.curve.dash);
            const std::string words = fitted(entry.words, u, width - (sample + 0.6) * u);
            add_text(list, words, {p.x() + (sample + 0.6) * u, p.y()}, u, theme_colours(look.theme).ink);
            p.x() += (sample + 2.2) * u + text_width(words, u);
        }
    }
}

double widest(const std::vector<std::string>& numbers, double u) {
    double width = 0.0;
    for (const std::string& n : numbers) width = std::max(width, text_width(n, u));
    return width;
}

// The across axis with as many numbers as stand apart on this width.
Axis fitting_axis(const ChartInfo& info, double width, double u) {
    for (int most = 9; most > 3; --most) {
        Axis axis = make_axis(info.across_words, info.across, most, info.across_scale);
        bool apart = true;
        for (std::size_t i = 1; i < axis.ticks.size(); ++i) {
            const double gap = width * (axis.part(axis.ticks[i]) - axis.part(axis.ticks[i - 1]));
            const double words = 0.5 * (text_width(axis.numbers[i], u) + text_width(axis.numbers[i - 1], u));
            apart = apart && gap > words + 0.9 * u;
        }
        if (apart) return axis;
    }
    return make_axis(info.across_words, info.across, 3, info.across_scale);
}

// Fine lines between the numbers of a logarithmic axis: at 1 to 9 times every power of ten.
std::vector<double> between_ticks(const Axis& axis) {
    std::vector<double> found;
    if (axis.scale == Scale::linear) return found;
    const int first = static_cast<int>(std::floor(std::log10(axis.low)));
    for (int n = first; std::pow(10.0, n) < axis.high; ++n)
        for (int m = 1; m < 10; ++m) {
            const double value = m * std::pow(10.0, n);
            if (value > axis.low && value < axis.high) found.push_back(value);
        }
    return found;
}

void add_grid(DrawingList& list, const ChartFrame& f) {
    const ThemeColours& colours = theme_colours(f.look.theme);
    const double u = f.look.unit, fine = std::max(0.5, u / 20.0);
    const Colour light = mixed(colours.stage, colours.rule, 0.7),
                 lighter = mixed(colours.stage, colours.rule, 0.35);
    add_fill(list, rectangle(f.plot), colours.stage);
    const auto upright = [&](double value, const Colour& colour) {
        const double x = f.plot.x + f.plot.width * f.across.part(value);
        add_line(list, {x, f.plot.y}, {x, f.plot.bottom()}, colour, fine);
    };
    const auto level = [&](double value, const Colour& colour) {
        const double y = f.plot.bottom() - f.plot.height * f.up.part(value);
        add_line(list, {f.plot.x, y}, {f.plot.right(), y}, colour, fine);
    };
    for (const double v : between_ticks(f.across)) upright(v, lighter);
    for (const double v : between_ticks(f.up)) level(v, lighter);
    for (const double v : f.across.ticks) upright(v, light);
    for (const double v : f.up.ticks) level(v, light);
    // 0 where it is within the plot, then the axes
    if (f.across.scale == Scale::linear && f.across.low < 0.0 && f.across.high > 0.0)
        upright(0.0, colours.muted);
    if (f.up.scale == Scale::linear && f.up.low < 0.0 && f.up.high > 0.0) level(0.0, colours.muted);
    add_line(list,
             polyline({{f.plot.x, f.plot.y}, {f.plot.x, f.plot.bottom()}, {f.plot.right(), f.plot.bottom()}}),
             colours.muted, std::max(0.75, u / 14.0));
}

void add_numbers(DrawingList& list, const ChartFrame& f) {
    const ThemeColours& colours = theme_colours(f.look.theme);
    const double u = f.look.unit;
    for (std::size_t i = 0; i < f.across.ticks.size(); ++i)
        add_text(list, f.across.numbers[i],
                 {f.plot.x + f.plot.width * f.across.part(f.across.ticks[i]), f.plot.bottom() + 1.25 * u}, u,
                 colours.ink, Across::middle);
    double above = 1e300;  // top of the last number that was set
    for (std::size_t i = 0; i < f.up.ticks.size(); ++i) {
        const double y = f.plot.bottom() - f.plot.height * f.up.part(f.up.ticks[i]);
        if (y + 0.6 * u > above) continue;  // no room: the grid's line alone
        add_text_on_middle(list, f.up.numbers[i], {f.plot.x - 0.5 * u, y}, u, colours.ink, Across::right);
        above = y - 0.6 * u;
    }
    add_text(list, f.across.words, {f.plot.centre().x(), f.plot.bottom() + 2.7 * u}, u, colours.ink,
             Across::middle);
}

}  // namespace

CurveLook curve_look(const ChartLook& look, int number) {
    const bool light = luminance(theme_colours(look.theme).page) > 0.4;
    const Colour on_light[] = {okabe_ito::blue, okabe_ito::vermillion,
                               mixed(okabe_ito::bluish_green, okabe_ito::black, 0.25),
                               mixed(okabe_ito::reddish_purple, okabe_ito::black, 0.2), okabe_ito::black};
    const Colour on_dark[] = {okabe_ito::sky_blue,
                              okabe_ito::orange,
                              mixed(okabe_ito::bluish_green, {1.0, 1.0, 1.0, 1.0}, 0.3),
                              mixed(okabe_ito::reddish_purple, {1.0, 1.0, 1.0, 1.0}, 0.2),
                              {1.0, 1.0, 1.0, 1.0}};
    const double u = look.unit;
    const std::vector<double> dashes[] = {{},
                                          {0.7 * u, 0.35 * u},
                                          {0.2 * u, 0.3 * u},
                                          {1.2 * u, 0.3 * u, 0.2 * u, 0.3 * u},
                                          {1.6 * u, 0.5 * u}};
    const int i = number % 5;
    return {light ? on_light[i] : on_dark[i], dashes[i], 0.16 * u};
}

ChartFrame add_frame(DrawingList& list, const Rect& box, const ChartInfo& info, const ChartLook& look) {
    const ThemeColours& colours = theme_colours(look.theme);
    const double u = look.unit;
    double y = box.y;
    if (!info.title.empty()) {
        y += title_size * u;
        add_text(list, fitted(info.title, title_size * u, box.width, Weight::bold), {box.x, y - 0.1 * u},
                 title_size * u, colours.ink, Across::left, Weight::bold);
        y += 0.7 * u;
    }
    const std::size_t rows = key_rows(info.key, box.width, u).size();
    if (rows > 0) {
        add_key(list, info, look, {box.x, y + u}, box.width);
        y += (row * static_cast<double>(rows) + 0.3) * u;
    }
    if (!info.up_words.empty()) {
        add_text(list, info.up_words, {box.x, y + u}, u, colours.ink);
        y += 1.9 * u;
    }

    std::vector<std::string> below;
    for (const std::string& remark : info.remarks)
        for (const std::string& line : wrapped(remark, u, box.width, box.width, 4)) below.push_back(line);
    const double foot = box.bottom() - (row * static_cast<double>(below.size()) + 3.1) * u;
    for (std::size_t i = 0; i < below.size(); ++i)
        add_text(list, below[i], {box.x, foot + (4.4 + row * static_cast<double>(i)) * u}, u, colours.muted);

    ChartFrame frame;
    frame.look = look;
    const double height = foot - y;
    const int levels = std::clamp(static_cast<int>(height / (2.4 * u)) + 1, 3, 9);
    frame.up = make_axis(info.up_words, info.up, levels, info.up_scale);
    if (info.names_wide > 0.0) frame.up.ticks.clear(), frame.up.numbers.clear();
    const double left = info.names_wide > 0.0 ? info.names_wide : widest(frame.up.numbers, u) + 0.6 * u;
    // The last number of the across axis stands half beyond the plot.
    const double right = 0.5 * widest(make_axis("", info.across, 9, info.across_scale).numbers, u) + 0.2 * u;
    frame.plot = {box.x + left, y, box.width - left - right, height};
    if (frame.plot.width < 8.0 * u || height < 5.0 * u)
        throw OutOfRange("room for a chart", fixed(box.width, 0) + " x " + fixed(box.height, 0) + " px",
                         "its text leaves no room for its curves; give more room, or smaller text");
    frame.words.inside = frame.plot;
    frame.across = fitting_axis(info, frame.plot.width, u);
    add_grid(list, frame);
    add_numbers(list, frame);
    return frame;
}

void add_curve(DrawingList& list, ChartFrame& frame, const std::vector<Point>& values,
               const CurveLook& curve) {
    std::vector<Point> points;
    for (const Point& v : values)
        if (v.allFinite()) points.push_back(frame.at(v));
    if (points.size() < 2) return;
    list.items.push_back(
        Shape{polyline(points), std::nullopt, curve.colour, curve.width, curve.dash, frame.plot});
    frame.words.lines.push_back(std::move(points));
}

void add_levels(DrawingList& list, ChartFrame& frame, std::initializer_list<double> levels) {
    const double u = frame.look.unit;
    const CurveLook line{theme_colours(frame.look.theme).muted, {0.3 * u, 0.3 * u}, 0.08 * u};
    for (const double y : levels)
        add_curve(list, frame, {{frame.across.low, y}, {frame.across.high, y}}, line);
}

void add_dot(DrawingList& list, const ChartFrame& frame, const Point& value, const Colour& colour,
             DotLook dot) {
    const double u = frame.look.unit;
    const Colour& page = theme_colours(frame.look.theme).stage;
    add_shape(list, circle(frame.at(value), 0.34 * u), dot == DotLook::full ? colour : page, colour,
              0.12 * u);
}

std::optional<Rect> add_label(DrawingList& list, ChartFrame& frame, const Point& value,
                              const std::string& words, const Colour& colour) {
    Text text{words,
              Point::Zero(),
              Across::left,
              frame.look.unit,
              colour,
              Weight::normal,
              theme_colours(frame.look.theme).stage};
    return add_label(list, frame.words, frame.at(value), text);
}

DrawingList chart_page(const ChartSize& size, const std::string& title, Theme theme) {
    if (size.width < 320 || size.width > 4000 || size.height < 320 || size.height > 4000)
        throw OutOfRange("size of a chart",
                         std::to_string(size.width) + " x " + std::to_string(size.height) + " px",
                         "it must be 320 to 4000 px wide and high");
    return {title, size.width, size.height, theme_colours(theme).page};
}

ChartLook chart_look(const ChartSize& size, Theme theme) {
    return {theme, std::max(size.height / 45.0, std::min(size.height / 32.0, size.width / 44.0))};
}

Rect chart_box(const ChartSize& size) {
    const double margin = 1.2 * chart_look(size, Theme::light).unit;
    return {margin, margin, size.width - 2.0 * margin, size.height - 2.0 * margin};
}

}  // namespace overbend::chart
