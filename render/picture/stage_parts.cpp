#include "render/picture/stage_parts.h"

#include <algorithm>
#include <cmath>

#include "render/picture/angle_arc.h"
#include "sim/units.h"

namespace overbend::picture {

namespace {

// What words may lie on.
enum class Cover { nothing, arcs, anything };

bool is_free(const Sheet& sheet, const Rect& box, Cover cover) {
    if (!holds(grown(sheet.view.stage, -0.4 * sheet.unit()), box)) return false;
    const Rect wide = grown(box, 0.25 * sheet.unit());
    if (overlap_any(wide, sheet.taken)) return false;
    if (cover == Cover::anything) return true;
    const auto holds_none = [](const Rect& area, const std::vector<Point>& points) {
        return std::none_of(points.begin(), points.end(), [&](const Point& p) { return holds(area, p); });
    };
    return holds_none(grown(wide, 0.5 * sheet.recording.thickness * sheet.view.scale), sheet.kept_clear) &&
           (cover == Cover::arcs || holds_none(wide, sheet.arcs));
}

// A box whose edge nearest to the point is `away` from it, in the given direction.
Rect box_beside(const Point& near, double direction, double away, double width, double height) {
    const Point towards(std::cos(direction), std::sin(direction));
    const Point centre = near + away * towards + Point(0.5 * width * towards.x(), 0.5 * height * towards.y());
    return {centre.x() - 0.5 * width, centre.y() - 0.5 * height, width, height};
}

}  // namespace

void add_on_stage(Sheet& sheet, Shape shape) {
    shape.clip = sheet.view.stage;
    sheet.list.items.emplace_back(std::move(shape));
}

void add_plate(Sheet& sheet, const Rect& box, const Colour& edge) {
    add_shape(sheet.list, rectangle(box, 0.4 * sheet.unit()), sheet.colours.stage, edge, sheet.layout.line);
    sheet.taken.push_back(box);
}

void add_cased_line(Sheet& sheet, const Path& path, const Colour& colour, double width,
                    const std::vector<double>& dash) {
    add_on_stage(sheet, {path, {}, with_opacity(sheet.colours.stage, 0.85), width + 0.24 * sheet.unit()});
    add_on_stage(sheet, {path, {}, colour, width, dash});
}

void add_callout(Sheet& sheet, const std::vector<CalloutLine>& lines, const Point& near, double direction,
                 double away, const Colour& edge) {
    std::vector<std::string> words;
    for (const CalloutLine& l : lines) words.push_back(l.words);
    const Rect size = angle_plate(Point::Zero(), words, sheet.unit());
    const std::optional<Rect> box = free_room(sheet, near, direction, away, size.width, size.height);
    if (!box) return;  // the panel says the same
    add_plate(sheet, *box, edge);
    add_lines(sheet, lines, *box, Across::middle);
}

void add_lines(Sheet& sheet, const std::vector<CalloutLine>& lines, const Rect& plate, Across across) {
    const double size = angle_letters(sheet.unit()), height = angle_line_height(sheet.unit());
    double middle = plate.y + 0.2 * size + 0.5 * height;
    const double at = across == Across::left    ? plate.x + 0.45 * size
                      : across == Across::right ? plate.right() - 0.45 * size
                                                : plate.centre().x();
    for (const CalloutLine& l : lines) {
        add_text_on_middle(sheet.list, l.words, {at, middle}, size, l.colour, across, l.weight);
        middle += height;
    }
}

std::optional<Rect> free_room(const Sheet& sheet, const Point& near, double direction, double away,
                              double width, double height) {
    for (const Cover cover : {Cover::nothing, Cover::arcs, Cover::anything})
        for (int ring = 0; ring < 8; ++ring)
            for (int turn = 0; turn < 16; ++turn) {
                // Alternately to either side of the direction: 0, 1, -1, 2, -2, ... sixteenths of a turn.
                const int sixteenth = (turn % 2 == 1 ? 1 : -1) * ((turn + 1) / 2);
                const Rect box = box_beside(near, direction + sixteenth * pi / 8.0,
                                            away + ring * 1.4 * sheet.unit(), width, height);
                if (is_free(sheet, box, cover)) return box;
            }
    // Anywhere on the stage.
    return best_place(
        sheet.view.stage, width, height, 0.5 * sheet.unit(), [&](const Rect& box, double least) {
            const double away_from_it = (box.centre() - near).norm();
            return away_from_it < least && is_free(sheet, box, Cover::anything) ? away_from_it : 1e300;
        });
}

Point strip_point(const Sheet& sheet, const Place& p) {
    if (!sheet.info.motion) return sheet.view.on_picture(p);
    return sheet.view.on_picture(sheet.info.motion->turn * p + sheet.info.motion->shift);
}

double greatest_contact_force(const stroke::Recording& recording) {
    double greatest = 0.0;
    for (const stroke::State& s : recording.states)
        for (const stroke::ContactForce& c : s.contacts) greatest = std::max(greatest, c.force.norm());
    return greatest;
}

}  // namespace overbend::picture
