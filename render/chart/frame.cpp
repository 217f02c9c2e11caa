#include "render/chart/frame.h"

#include <algorithm>
#include <cmath>

#include "render/picture/marks.h"
#include "render/picture/text_width.h"
#include "sim/errors.h"

namespace overbend::chart {

namespace {

constexpr double title_size = 1.2;  // units
constexpr double row = 1.5;         // from line to line
constexpr double sample = 2.4;      // length of a curve's sample in the key

// Rows of the key, as indices of their first entries; a row holds what fits side by side.
std::vector<std::size_t> key_rows(const std::vector<KeyEntry>& key, double width, double u) {
    std::vector<std::size_t> first;
    double x = 0.0;
    for (std::size_t i = 0; i < key.size(); ++i) {
        const double wide = (sample + 2.2) * u + picture::text_width(key[i].words, u);
        if (first.empty() || x + wide > width) first.push_back(i), x = 0.0;
        x += wide;
    }
    return first;
}

void add_key(picture::DrawingList& list, const ChartInfo& info, const ChartLook& look,
             const picture::Point& at, double width) {
    const double u = look.unit;
    const std::vector<std::size_t> rows = key_rows(info.key, width, u);
    for (std::size_t r = 0; r < rows.size(); ++r) {
        const std::size_t end = r + 1 < rows.size() ? rows[r + 1] : info.key.size();
        picture::Point p = at + picture::Point(0.0, static_cast<double>(r) * row * u);
        for (std::size_t i = rows[r]; i < end; ++i) {
            const KeyEntry& entry = info.key[i];
            const double middle = p.y() - 0.36 * u;
            picture::add_line(list, {p.x(), middle}, {p.x() + sample * u, middle}, entry.curve.colour,
                              entry.curve.width, entry.curve.dash);
            const std::string words = picture::fitted(entry.words, u, width - (sample + 0.6) * u);
            picture::add_text(list, words, {p.x() + (sample + 0.6) * u, p.y()}, u,
                              picture::theme_colours(look.theme).ink);
            p.x() += (sample + 2.2) * u + picture::text_width(words, u);
        }
    }
}

double widest(const std::vector<std::string>& numbers, double u) {
    double width = 0.0;
    for (const std::string& n : numbers) width = std::max(width, picture::text_width(n, u));
    return width;
}

// The across axis with as many numbers as stand apart on this width.
Axis fitting_axis(const ChartInfo& info, double width, double u) {
    for (int most = 9; most > 3; --most) {
        Axis axis = make_axis(info.across_words, info.across, most, info.across_scale);
        bool apart = true;
        for (std::size_t i = 1; i < axis.ticks.size(); ++i) {
            const double gap = width * (axis.part(axis.ticks[i]) - axis.part(axis.ticks[i - 1]));
            const double words =
                0.5 * (picture::text_width(axis.numbers[i], u) + picture::text_width(axis.numbers[i - 1], u));
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

void add_grid(picture::DrawingList& list, const ChartFrame& f) {
    const picture::ThemeColours& colours = picture::theme_colours(f.look.theme);
    const double u = f.look.unit, fine = std::max(0.5, u / 20.0);
    const picture::Colour light = picture::mixed(colours.stage, colours.rule, 0.7),
                          lighter = picture::mixed(colours.stage, colours.rule, 0.35);
    picture::add_fill(list, picture::rectangle(f.plot), colours.stage);
    const auto upright = [&](double value, const picture::Colour& colour) {
        const double x = f.plot.x + f.plot.width * f.across.part(value);
        picture::add_line(list, {x, f.plot.y}, {x, f.plot.bottom()}, colour, fine);
    };
    const auto level = [&](double value, const picture::Colour& colour) {
        const double y = f.plot.bottom() - f.plot.height * f.up.part(value);
        picture::add_line(list, {f.plot.x, y}, {f.plot.right(), y}, colour, fine);
    };
    for (const double v : between_ticks(f.across)) upright(v, lighter);
    for (const double v : between_ticks(f.up)) level(v, lighter);
    for (const double v : f.across.ticks) upright(v, light);
    for (const double v : f.up.ticks) level(v, light);
    // 0 where it is within the plot, then the axes
    if (f.across.scale == Scale::linear && f.across.low < 0.0 && f.across.high > 0.0)
        upright(0.0, colours.muted);
    if (f.up.scale == Scale::linear && f.up.low < 0.0 && f.up.high > 0.0) level(0.0, colours.muted);
    picture::add_line(
        list,
        picture::polyline(
            {{f.plot.x, f.plot.y}, {f.plot.x, f.plot.bottom()}, {f.plot.right(), f.plot.bottom()}}),
        colours.muted, std::max(0.75, u / 14.0));
}

void add_numbers(picture::DrawingList& list, const ChartFrame& f) {
    const picture::ThemeColours& colours = picture::theme_colours(f.look.theme);
    const double u = f.look.unit;
    for (std::size_t i = 0; i < f.across.ticks.size(); ++i)
        picture::add_text(
            list, f.across.numbers[i],
            {f.plot.x + f.plot.width * f.across.part(f.across.ticks[i]), f.plot.bottom() + 1.25 * u}, u,
            colours.ink, picture::Across::middle);
    double above = 1e300;  // top of the last number that was set
    for (std::size_t i = 0; i < f.up.ticks.size(); ++i) {
        const double y = f.plot.bottom() - f.plot.height * f.up.part(f.up.ticks[i]);
        if (y + 0.6 * u > above) continue;  // no room: the grid's line alone
        picture::add_text(list, f.up.numbers[i], {f.plot.x - 0.5 * u, picture::baseline_for_middle(y, u)}, u,
                          colours.ink, picture::Across::right);
        above = y - 0.6 * u;
    }
    picture::add_text(list, f.across.words, {f.plot.centre().x(), f.plot.bottom() + 2.7 * u}, u, colours.ink,
                      picture::Across::middle);
}

}  // namespace

CurveLook curve_look(const ChartLook& look, int number) {
    const bool light = picture::luminance(picture::theme_colours(look.theme).page) > 0.4;
    const picture::Colour on_light[] = {
        picture::okabe_ito::blue, picture::okabe_ito::vermillion,
        picture::mixed(picture::okabe_ito::bluish_green, picture::okabe_ito::black, 0.25),
        picture::mixed(picture::okabe_ito::reddish_purple, picture::okabe_ito::black, 0.2),
        picture::okabe_ito::black};
    const picture::Colour on_dark[] = {
        picture::okabe_ito::sky_blue,
        picture::okabe_ito::orange,
        picture::mixed(picture::okabe_ito::bluish_green, {1.0, 1.0, 1.0, 1.0}, 0.3),
        picture::mixed(picture::okabe_ito::reddish_purple, {1.0, 1.0, 1.0, 1.0}, 0.2),
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

ChartFrame add_frame(picture::DrawingList& list, const picture::Rect& box, const ChartInfo& info,
                     const ChartLook& look) {
    const picture::ThemeColours& colours = picture::theme_colours(look.theme);
    const double u = look.unit;
    double y = box.y;
    if (!info.title.empty()) {
        y += title_size * u;
        picture::add_text(list, picture::fitted(info.title, title_size * u, box.width, picture::Weight::bold),
                          {box.x, y - 0.1 * u}, title_size * u, colours.ink, picture::Across::left,
                          picture::Weight::bold);
        y += 0.7 * u;
    }
    const std::size_t rows = key_rows(info.key, box.width, u).size();
    if (rows > 0) {
        add_key(list, info, look, {box.x, y + u}, box.width);
        y += (row * static_cast<double>(rows) + 0.3) * u;
    }
    picture::add_text(list, info.up_words, {box.x, y + u}, u, colours.ink);
    y += 1.9 * u;

    std::vector<std::string> below;
    for (const std::string& remark : info.remarks)
        for (const std::string& line : picture::wrapped(remark, u, box.width, box.width, 4))
            below.push_back(line);
    const double foot = box.bottom() - (row * static_cast<double>(below.size()) + 3.1) * u;
    for (std::size_t i = 0; i < below.size(); ++i)
        picture::add_text(list, below[i], {box.x, foot + (4.4 + row * static_cast<double>(i)) * u}, u,
                          colours.muted);

    ChartFrame frame;
    frame.look = look;
    const double height = foot - y;
    const int levels = std::clamp(static_cast<int>(height / (2.4 * u)) + 1, 3, 9);
    frame.up = make_axis(info.up_words, info.up, levels, info.up_scale);
    const double left = widest(frame.up.numbers, u) + 0.6 * u;
    // The last number of the across axis stands half beyond the plot.
    const double right = 0.5 * widest(make_axis("", info.across, 9, info.across_scale).numbers, u) + 0.2 * u;
    frame.plot = {box.x + left, y, box.width - left - right, height};
    if (frame.plot.width < 8.0 * u || height < 5.0 * u)
        throw OutOfRange("room for a chart",
                         picture::fixed(box.width, 0) + " x " + picture::fixed(box.height, 0) + " px",
                         "its text leaves no room for its curves; give more room, or smaller text");
    frame.words.inside = frame.plot;
    frame.across = fitting_axis(info, frame.plot.width, u);
    add_grid(list, frame);
    add_numbers(list, frame);
    return frame;
}

void add_curve(picture::DrawingList& list, ChartFrame& frame, const std::vector<picture::Point>& values,
               const CurveLook& curve) {
    std::vector<picture::Point> points;
    for (const picture::Point& v : values)
        if (v.allFinite()) points.push_back(frame.at(v));
    if (points.size() < 2) return;
    list.items.push_back(picture::Shape{picture::polyline(points), std::nullopt, curve.colour, curve.width,
                                        curve.dash, frame.plot});
    frame.words.lines.push_back(std::move(points));
}

void add_dot(picture::DrawingList& list, const ChartFrame& frame, const picture::Point& value,
             const picture::Colour& colour, DotLook dot) {
    const double u = frame.look.unit;
    const picture::Colour& page = picture::theme_colours(frame.look.theme).stage;
    picture::add_shape(list, picture::circle(frame.at(value), 0.34 * u), dot == DotLook::full ? colour : page,
                       colour, 0.12 * u);
}

std::optional<picture::Rect> add_label(picture::DrawingList& list, ChartFrame& frame,
                                       const picture::Point& value, const std::string& words,
                                       const picture::Colour& colour) {
    picture::Text text{words,
                       picture::Point::Zero(),
                       picture::Across::left,
                       frame.look.unit,
                       colour,
                       picture::Weight::normal,
                       picture::theme_colours(frame.look.theme).stage};
    return add_label(list, frame.words, frame.at(value), text);
}

picture::DrawingList chart_page(const ChartSize& size, const std::string& title, picture::Theme theme) {
    if (size.width < 320 || size.width > 4000 || size.height < 320 || size.height > 4000)
        throw OutOfRange("size of a chart",
                         std::to_string(size.width) + " x " + std::to_string(size.height) + " px",
                         "it must be 320 to 4000 px wide and high");
    picture::DrawingList list;
    list.title = title;
    list.width = size.width;
    list.height = size.height;
    list.background = picture::theme_colours(theme).page;
    return list;
}

ChartLook chart_look(const ChartSize& size, picture::Theme theme) {
    return {theme, std::max(size.height / 45.0, std::min(size.height / 32.0, size.width / 44.0))};
}

picture::Rect chart_box(const ChartSize& size) {
    const double margin = 1.2 * chart_look(size, picture::Theme::light).unit;
    return {margin, margin, size.width - 2.0 * margin, size.height - 2.0 * margin};
}

}  // namespace overbend::chart
