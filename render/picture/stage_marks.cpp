// Marks on the stage: contact forces, interferences, the scale.

#include <algorithm>

#include "render/picture/stage_parts.h"
#include "render/picture/text_width.h"
#include "sim/units.h"

namespace overbend::picture {

namespace {

constexpr double longest_arrow = 5.0;  // units

// An arrow with its point at `to`.
void add_arrow(Sheet& sheet, const Point& from, const Point& to, const Colour& colour) {
    const double length = (to - from).norm();
    const double u = sheet.unit();
    if (length < 0.5 * u) return;
    const Point along = (to - from) / length;
    const Point side(-along.y(), along.x());
    const double head = std::min(0.9 * u, 0.6 * length);
    add_cased_line(sheet, polyline({from, to - 0.8 * head * along}), colour, 0.2 * u);
    const Point back = to - head * along, half = 0.42 * head * side;
    add_on_stage(sheet, {polygon({to, back + half, back - half}), colour,
                         with_opacity(sheet.colours.stage, 0.85), 0.08 * u});
}

// A cross in a ring, which no other mark has.
void add_cross(Sheet& sheet, const Point& at) {
    const double u = sheet.unit();
    const double arm = 0.62 * u;
    add_cased_line(sheet, circle(at, 1.05 * u), sheet.colours.alarm, 0.26 * u);
    for (const double way : {-1.0, 1.0})
        add_cased_line(sheet, polyline({at - Point(arm, way * arm), at + Point(arm, way * arm)}),
                       sheet.colours.alarm, 0.26 * u);
}

// Pixels on the picture for a contact force of 1 N per mm.
double arrow_scale(const Sheet& sheet) {
    const double greatest = greatest_contact_force(sheet.recording);
    return greatest > 0.0 ? longest_arrow * sheet.unit() / greatest : 0.0;
}

// An arrow of a round force, to read the others by.
struct ArrowKey {
    double length = 0.0;
    std::string words;
};

std::optional<ArrowKey> arrow_key(const Sheet& sheet) {
    const double greatest = greatest_contact_force(sheet.recording) * sheet.info.strip_width / 1000.0;
    if (sheet.info.arrows == Arrows::hidden || sheet.layout.narrow || sheet.info.motion || !(greatest > 0.0))
        return {};
    const double force = rounded_down(0.8 * greatest);
    return ArrowKey{force * 1000.0 / sheet.info.strip_width * arrow_scale(sheet),
                    short_number(force) + " kN"};
}

}  // namespace

void add_arrows(Sheet& sheet) {
    if (sheet.info.arrows == Arrows::hidden || sheet.info.motion) return;
    const double scale = arrow_scale(sheet);
    for (const stroke::ContactForce& c : sheet.state.contacts) {
        const Point to = sheet.view.on_picture(c.at);
        const Point on_picture(c.force.x(), -c.force.y());
        add_arrow(sheet, to - scale * on_picture, to, sheet.colours.ink);
    }
}

namespace {

// Where the mark stands: at the place, or at the stage's edge nearest to it.
Point mark_point(const Sheet& sheet, const InterferenceMark& mark) {
    const Rect room = grown(sheet.view.stage, -1.4 * sheet.unit());
    const Point at = sheet.view.on_picture(mark.at);
    return {std::clamp(at.x(), room.x, room.right()), std::clamp(at.y(), room.y, room.bottom())};
}

bool is_on_stage(const Sheet& sheet, const InterferenceMark& mark) {
    return holds(sheet.view.stage, sheet.view.on_picture(mark.at));
}

}  // namespace

// Their marks come below the tools' names, which are never where the strip comes; their words after all
// others. One that lies beyond the stage stands at its edge.
void add_interference_marks(Sheet& sheet) {
    const double u = sheet.unit();
    for (const InterferenceMark& mark : sheet.info.interferences) {
        const Point at = is_on_stage(sheet, mark) ? sheet.view.on_picture(mark.at) : mark_point(sheet, mark);
        add_cross(sheet, at);
        sheet.taken.push_back({at.x() - 1.1 * u, at.y() - 1.1 * u, 2.2 * u, 2.2 * u});
    }
}

void add_interference_words(Sheet& sheet) {
    const double u = sheet.unit();
    for (const InterferenceMark& mark : sheet.info.interferences) {
        const bool seen = is_on_stage(sheet, mark);
        const Point at = seen ? sheet.view.on_picture(mark.at) : mark_point(sheet, mark);
        std::vector<CalloutLine> lines{
            {"interference " + fixed(mark.depth, 2) + " mm", sheet.colours.ink, Weight::bold}};
        const std::string words = fitted(mark.text, 1.05 * u, 0.4 * sheet.view.stage.width);
        if (!words.empty()) lines.push_back({words, sheet.colours.ink, Weight::normal});
        if (!seen) lines.push_back({"outside the picture", sheet.colours.ink, Weight::normal});
        const double outwards = at.x() < sheet.view.stage.centre().x() ? pi : 0.0;
        add_callout(sheet, lines, at, outwards, 1.6 * u, sheet.colours.alarm);
    }
}

void add_scale(Sheet& sheet) {
    const double u = sheet.unit();
    const Rect room = key_box(sheet.layout);
    const double length = rounded_down(8.0 * u / sheet.view.scale);
    const std::string length_words = short_number(length) + " mm";
    const double bar = length * sheet.view.scale;
    const double bar_part = bar + 0.5 * u + text_width(length_words, u);
    const std::optional<ArrowKey> key = arrow_key(sheet);
    const double arrow_part = key ? 1.2 * u + key->length + 0.5 * u + text_width(key->words, u) : 0.0;
    const bool both = bar_part + arrow_part + 1.4 * u <= room.width;
    Rect plate = room;
    plate.width = bar_part + (both ? arrow_part : 0.0) + 1.4 * u;
    add_plate(sheet, plate, sheet.colours.rule);

    const double y = plate.centre().y();
    double x = plate.x + 0.7 * u;
    add_line(sheet.list,
             polyline({{x, y - 0.4 * u},
                       {x, y + 0.4 * u},
                       {x, y},
                       {x + bar, y},
                       {x + bar, y - 0.4 * u},
                       {x + bar, y + 0.4 * u}}),
             sheet.colours.ink, 0.12 * u);
    add_text_on_middle(sheet.list, length_words, {x + bar + 0.5 * u, y}, u, sheet.colours.ink);
    if (!key || !both) return;
    x += bar_part + 1.2 * u;
    add_arrow(sheet, {x, y}, {x + key->length, y}, sheet.colours.ink);
    add_text_on_middle(sheet.list, key->words, {x + key->length + 0.5 * u, y}, u, sheet.colours.ink);
}

}  // namespace overbend::picture
