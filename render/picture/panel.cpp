#include "render/picture/panel.h"

#include <algorithm>
#include <cmath>

#include "render/picture/stage_parts.h"
#include "render/picture/tool_labels.h"
#include "sim/errors.h"

namespace overbend::picture {

namespace {

using stroke::Recording;
using stroke::State;
using tool::Box;

Layout panel_layout(const Rect& box, double unit) {
    Layout layout;
    layout.unit = unit;
    layout.line = std::max(0.5, unit / 16.0);
    layout.stage = box;
    layout.narrow = true;  // of tools, the roles alone
    return layout;
}

// Half the width of the zone in which the tools touch the strip.
double half_zone(const Recording& recording) {
    double half = 4.0 * recording.thickness;
    for (const State& s : recording.states)
        for (const stroke::ContactForce& c : s.contacts) half = std::max(half, std::abs(c.at.x()));
    return half;
}

// The strip at some instants, and the zone between the tools.
Box worth_seeing(const Recording& recording, const std::vector<double>& instants) {
    const double zone = half_zone(recording);
    Box box{Place(-1.4 * zone, -1.2 * zone), Place(1.4 * zone, 1.2 * zone)};
    for (const double instant : instants) {
        const State s = state_at(recording, instant);
        for (std::size_t i = 0; i < s.x.size(); ++i) {
            box.low = box.low.cwiseMin(Place(s.x[i], s.y[i]));
            box.high = box.high.cwiseMax(Place(s.x[i], s.y[i]));
        }
    }
    for (const tool::RigidTool& t : recording.tools)
        if (t.role == tool::Role::gauge)  // its face, and a little of it
            box.high.x() = std::max(box.high.x(), t.position.x() + t.outline.box().low.x() + 0.3 * zone);
    box.low.array() -= recording.thickness;
    box.high.array() += recording.thickness;
    return box;
}

void add_plain_strip(Sheet& sheet) {
    const std::vector<Station> at =
        stations(sheet.recording, sheet.state, 0.35 * sheet.unit() / sheet.view.scale);
    add_on_stage(sheet, {outline_path(sheet, at), sheet.colours.ink, sheet.colours.ink, 0.1 * sheet.unit()});
}

// Of the tools whose names are shown.
std::vector<ToolLabel> labels_at(const Recording& recording, const View& view, const Layout& layout,
                                 const State& state, const PanelInfo& info) {
    if (info.words == ToolWords::hidden) return {};
    std::vector<int> named;
    for (int t = 0; t < static_cast<int>(recording.tools.size()); ++t)
        if (info.words == ToolWords::all || tool::presses(recording.tools[t].role)) named.push_back(t);
    return place_labels(recording, view, layout, {state, info.punch_travel.value_or(state.travel), named});
}

}  // namespace

View choose_panel_view(const Recording& recording, const std::vector<double>& instants, const Rect& box,
                       double unit) {
    check_recording(recording);
    if (instants.empty()) throw OutOfRange("instants of a panel", "0", "give at least one");
    const Box seen = worth_seeing(recording, instants);
    View view;
    const double room = 0.8 * unit;
    const Place extent = seen.high - seen.low;
    view.scale = std::min((box.width - 2.0 * room) / extent.x(), (box.height - 2.0 * room) / extent.y());
    view.centre = 0.5 * (seen.low + seen.high);
    view.stage = box;
    return view;
}

View moved_view(View view, const Rect& box) {
    view.stage = box;
    return view;
}

double panel_raise(const Recording& recording, const View& view) {
    return std::min(raised_by(recording, view), std::max(3.0 * recording.thickness, 0.18 * view.height_mm()));
}

void add_panel(DrawingList& list, const Recording& recording, double instant, const PanelInfo& given,
               const View& asked) {
    View view = asked;
    const Layout layout = panel_layout(view.stage, given.unit);
    const ThemeColours& colours = theme_colours(given.theme);
    const State state = state_at(recording, instant);
    view.labels = labels_at(recording, view, layout, state, given);
    StageInfo info;
    info.theme = given.theme;
    info.ghost = given.ghost;
    info.punch_travel = given.punch_travel;
    info.strip_width = 1.0;
    info.interferences = given.interferences;
    info.colour_limit = given.colour_limit;
    if (!(info.colour_limit > 0.0)) info.colour_limit = colour_limit({&recording}, info.colouring);
    Sheet sheet{recording, state, state, instant, info, layout, view, colours, list, {}, {}, {}};
    add_fill(list, rectangle(view.stage), colours.stage);
    add_tools(sheet);
    given.paint == StripPaint::layers ? add_strip(sheet) : add_plain_strip(sheet);
    add_ghost(sheet);
    add_tool_labels(sheet);
    for (const ToolLabel& label : view.labels) sheet.taken.push_back(label.box);
    add_interference_marks(sheet);
    add_interference_words(sheet);
    add_line(list, rectangle(view.stage), colours.rule, layout.line);
}

}  // namespace overbend::picture
