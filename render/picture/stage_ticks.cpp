// Bend lines as ticks across the strip, which travel with it, and their names.

#include <algorithm>
#include <cmath>

#include "render/picture/angle_arc.h"
#include "render/picture/stage_parts.h"
#include "render/picture/text_width.h"
#include "sim/units.h"

namespace overbend::picture {

namespace {

struct Tick {
    std::string name;
    double blank_position = 0.0;
    bool now = false;  // a bend of this stroke
};

std::vector<Tick> ticks(const Sheet& sheet) {
    std::vector<Tick> result;
    for (const BendMark& bend : sheet.info.bends) result.push_back({bend.name, bend.blank_position, true});
    for (const BendLine& tick : sheet.info.ticks)
        if (std::none_of(result.begin(), result.end(), [&](const Tick& other) {
                return std::abs(other.blank_position - tick.blank_position) < 1e-6;
            }))
            result.push_back({tick.name, tick.blank_position, false});
    return result;
}

// The tick's middle on the picture and the direction across the strip there.
struct TickPlace {
    Point at;
    Point across;
};

TickPlace place_of(const Sheet& sheet, const Tick& tick) {
    const Spot spot = spot_on(sheet.recording, sheet.state, tick.blank_position);
    const Point at = strip_point(sheet, spot.at);
    const Place above = spot.at + Place(-std::sin(spot.theta), std::cos(spot.theta));
    return {at, (strip_point(sheet, above) - at).normalized()};
}

double half_length(const Sheet& sheet, const Tick& tick) {
    return 0.5 * sheet.recording.thickness * sheet.view.scale + (tick.now ? 0.75 : 0.5) * sheet.unit();
}

// Whether a box lies on a tool that comes down with the ram, where its words would seem to be the tool's.
bool on_tool(const Sheet& sheet, const Rect& box) {
    for (int k = 0; k < static_cast<int>(sheet.tools().size()); ++k) {
        if (!sheet.tools()[k].moves_with_ram()) continue;
        const std::vector<Point> outline = tool_points(sheet.tools()[k], sheet.place_of(k), sheet.view);
        for (const Point& p : {Point(box.x, box.y), Point(box.right(), box.y), Point(box.x, box.bottom()),
                               Point(box.right(), box.bottom()), box.centre()})
            if (inside(outline, p)) return true;
    }
    return false;
}

// Nothing moves but the punch, so that words may stand beside the strip without jumping about.
bool only_punch_moves(const Sheet& sheet) {
    return !sheet.info.motion &&
           (sheet.state.phase == stroke::Phase::placed || sheet.state.phase == stroke::Phase::free);
}

}  // namespace

void add_ticks(Sheet& sheet) {
    const double u = sheet.unit();
    for (const Tick& tick : ticks(sheet)) {
        const TickPlace p = place_of(sheet, tick);
        const double half = half_length(sheet, tick);
        add_cased_line(sheet, polyline({p.at - half * p.across, p.at + half * p.across}), sheet.colours.ink,
                       (tick.now ? 0.22 : 0.12) * u);
    }
}

void add_tick_names(Sheet& sheet) {
    if (sheet.layout.narrow) return;
    const double u = sheet.unit();
    const std::vector<Tick> all = ticks(sheet);
    for (size_t i = 0; i < all.size(); ++i) {
        const Tick& tick = all[i];
        const TickPlace p = place_of(sheet, tick);
        if (tick.name.empty() || !holds(sheet.view.stage, p.at) || sheet.info.motion) continue;
        if (tick.now) {
            // Once there is an arc, its words name the bend.
            if (has_arc(measured(sheet.recording, sheet.state, sheet.info.bends[i]))) continue;
            add_callout(sheet, {{tick.name, sheet.colours.ink, Weight::bold}}, p.at, 0.5 * pi,
                        half_length(sheet, tick) + 0.4 * u, sheet.colours.rule);
        } else if (only_punch_moves(sheet)) {
            const Point beside = p.at + (half_length(sheet, tick) + 0.9 * u) * p.across;
            const double width = text_width(tick.name, u);
            const double x = beside.x() - 0.5 * width * (1.0 - p.across.x());
            const Rect box{x - 0.2 * u, beside.y() - 0.75 * u, width + 0.4 * u, 1.5 * u};
            const bool on_strip = std::any_of(sheet.kept_clear.begin(), sheet.kept_clear.end(),
                                              [&](const Point& q) { return holds(box, q); });
            if (overlap_any(box, sheet.taken) || on_strip || on_tool(sheet, box) ||
                !holds(grown(sheet.view.stage, -0.3 * u), box))
                continue;
            sheet.list.items.emplace_back(Text{tick.name,
                                               {x, baseline_for_middle(beside.y(), u)},
                                               Across::left,
                                               u,
                                               sheet.colours.ink,
                                               Weight::normal,
                                               with_opacity(sheet.colours.stage, 0.85)});
            sheet.taken.push_back(box);
        }
    }
}

}  // namespace overbend::picture
