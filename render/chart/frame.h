// What all charts have in common: heading, key, axes with their grid, remarks below, and labels placed beside
// the curves. A chart's kind adds its curves.
//
// Units  picture pixels; values in the axes' units.

#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <vector>

#include "render/chart/axes.h"
#include "render/picture/drawing_list.h"
#include "render/picture/label_room.h"
#include "render/picture/palette.h"

namespace overbend::chart {

struct ChartLook {
    picture::Theme theme = picture::Theme::light;
    double unit = 0.0;  // size of the smallest words, px, > 0
};

// How a curve is drawn: no two of a chart differ in colour alone.
struct CurveLook {
    picture::Colour colour;
    std::vector<double> dash;  // px; empty: unbroken
    double width = 1.0;        // px
};
// number: 0 to 4, then again from the first.
CurveLook curve_look(const ChartLook& look, int number);

struct KeyEntry {
    std::string words;
    CurveLook curve;
};

struct ChartInfo {
    std::string title;  // one line; empty: no room is kept for it
    std::string across_words, up_words;
    Extent across, up;
    Scale across_scale = Scale::linear, up_scale = Scale::linear;
    std::vector<KeyEntry> key;         // above the plot, in as many rows as it takes
    std::vector<std::string> remarks;  // below, each broken into as many lines as it takes
    double names_wide =
        0.0;  // px left of the plot for names that the kind writes; > 0: no numbers up the axis
};

// A chart with its axes drawn.
struct ChartFrame {
    ChartLook look;
    picture::Rect plot;
    Axis across, up;
    picture::LabelRoom words;  // within the plot; the curves are its lines
    picture::Point at(const picture::Point& value) const {
        return {plot.x + plot.width * across.part(value.x()),
                plot.bottom() - plot.height * up.part(value.y())};
    }
};

// Throws OutOfRange: an extent that make_axis refuses; a box whose plot is under 8 units wide or 5 high.
ChartFrame add_frame(picture::DrawingList& list, const picture::Rect& box, const ChartInfo& info,
                     const ChartLook& look);

// Fine lines across the plot, as at a section's surfaces.
void add_levels(picture::DrawingList& list, ChartFrame& frame, std::initializer_list<double> levels);

// Values of a list as points of a curve.
template <class Value>
std::vector<picture::Point> points_of(const std::vector<Value>& values, double Value::*across,
                                      double Value::*up) {
    std::vector<picture::Point> points;
    points.reserve(values.size());
    for (const Value& v : values) points.emplace_back(v.*across, v.*up);
    return points;
}

// A curve through these values, cut off at the plot's edges.
void add_curve(picture::DrawingList& list, ChartFrame& frame, const std::vector<picture::Point>& values,
               const CurveLook& curve);

enum class DotLook { full, ring };
void add_dot(picture::DrawingList& list, const ChartFrame& frame, const picture::Point& value,
             const picture::Colour& colour, DotLook dot = DotLook::full);

// Words as near to a value as there is room in the plot off all curves and other words; where there is none,
// off the words alone; nothing when even that fails. Returns their box.
std::optional<picture::Rect> add_label(picture::DrawingList& list, ChartFrame& frame,
                                       const picture::Point& value, const std::string& words,
                                       const picture::Colour& colour);

// A picture of a chart alone: 320 to 4000 px either way, words 1/36 of the height at least.
struct ChartSize {
    int width = 960;
    int height = 640;
};
// An empty picture for it, and the box that a chart fills on it. Throws OutOfRange: the size.
picture::DrawingList chart_page(const ChartSize& size, const std::string& title, picture::Theme theme);
picture::Rect chart_box(const ChartSize& size);
ChartLook chart_look(const ChartSize& size, picture::Theme theme);

}  // namespace overbend::chart
