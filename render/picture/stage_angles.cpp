// Bend angles on the stage: an arc from one flat's run-on line to the other flat, with its number; while the
// strip springs back, the arc under load beside it.

#include <algorithm>
#include <cmath>

#include "render/picture/angle_arc.h"
#include "render/picture/numbers.h"
#include "render/picture/stage_parts.h"

namespace overbend::picture {

namespace {

// The instant whose bend angle is shown beside that of now.
std::optional<MeasuredBend> bend_under_load(const Sheet& sheet, const BendMark& mark) {
    if (!sheet.info.ghost) return {};
    return measured(sheet.recording, state_at(sheet.recording, *sheet.info.ghost), mark);
}

std::vector<CalloutLine> angle_words(const Sheet& sheet, const BendMark& mark) {
    const std::optional<MeasuredBend> was = bend_under_load(sheet, mark);
    const stroke::Phase phase = sheet.state.phase;
    const std::string name = mark.name.empty() || sheet.layout.narrow ? "" : mark.name + " ";
    const double angle = measured(sheet.recording, sheet.actual, mark).angle;
    const std::string lead = sheet.layout.narrow            ? ""
                             : phase == stroke::Phase::free ? "free "
                             : was                          ? "now "
                             : phase == stroke::Phase::held ? "under load "
                                                            : "";
    std::vector<CalloutLine> lines;
    const Colour& colour = lead == "under load " ? sheet.colours.loaded : sheet.colours.ink;
    lines.push_back({name + lead + in_degrees(std::abs(angle)), colour, Weight::bold});
    if (was && !sheet.layout.narrow)
        lines.push_back(
            {"under load " + in_degrees(std::abs(was->angle)), sheet.colours.loaded, Weight::bold});
    return lines;
}

// Whether the words have fixed places for the whole stroke; otherwise they are placed picture by picture.
bool are_placed(const Sheet& sheet) {
    return !sheet.info.bends.empty() && sheet.view.angles.size() == sheet.info.bends.size();
}

std::optional<AnglePlace> place_of(const Sheet& sheet, std::size_t bend) {
    return are_placed(sheet) ? sheet.view.angles[bend] : std::nullopt;
}

// The plate of the words that stand in one place for the whole stroke: as wide as they are, at the end of
// that place that looks at the bend.
Rect plate_in(const Sheet& sheet, const AnglePlace& place, const std::vector<CalloutLine>& lines) {
    std::vector<std::string> words;
    for (const CalloutLine& l : lines) words.push_back(l.words);
    Rect plate = angle_plate({place.box.x, place.box.y}, words, sheet.unit());
    if (place.anchor == Anchor::right) plate.x = place.box.right() - plate.width;
    return plate;
}

// While the strip crosses their place, only the panel shows the angle.
bool is_shown(const Sheet& sheet, const AnglePlace& place) {
    return off_strip(place.box, sheet.state, sheet.recording.thickness, sheet.view, 0.5 * sheet.unit());
}

// From the plate to its arc, when it is not right beside it. Below all words.
void add_leader(Sheet& sheet, const BendMark& mark, const AnglePlace& place, const AngleArc& arc) {
    const Rect plate = plate_in(sheet, place, angle_words(sheet, mark));
    const Point tip = on_arc(arc, arc.radius, arc.middle());
    const Point end(std::clamp(tip.x(), plate.x, plate.right()),
                    std::clamp(tip.y(), plate.y, plate.bottom()));
    if ((tip - end).norm() > 1.2 * sheet.unit())
        add_cased_line(sheet, polyline({end, tip}), sheet.colours.muted, sheet.layout.line);
}

void add_angle_lines(Sheet& sheet, const BendMark& mark, const std::optional<AnglePlace>& place) {
    const double u = sheet.unit();
    const double thin = 1.4 * sheet.layout.line;
    const std::vector<double> dash{0.5 * u, 0.35 * u};
    const MeasuredBend now = measured(sheet.recording, sheet.state, mark);
    if (!has_arc(now)) return;
    const AngleArc a = angle_arc(sheet.recording, sheet.view, now, u);
    if (place && is_shown(sheet, *place)) add_leader(sheet, mark, *place, a);
    add_cased_line(sheet, polyline({a.corner, on_arc(a, a.radius + 1.2 * u, a.from)}), sheet.colours.ink,
                   thin, dash);
    add_cased_line(sheet, arc(a.corner, a.radius, a.from, a.to), sheet.colours.ink, 1.5 * thin);
    for (int i = 0; i <= 12; ++i)
        sheet.arcs.push_back(on_arc(a, a.radius, a.from + i / 12.0 * (a.to - a.from)));
    const std::optional<MeasuredBend> was = bend_under_load(sheet, mark);
    if (!was) return;
    const AngleArc b = arc_of_radius(sheet.recording, sheet.view, *was, a.radius + 0.7 * u);
    add_cased_line(sheet, arc(b.corner, b.radius, b.from, b.to), sheet.colours.loaded, 1.5 * thin, dash);
}

void add_angle_words(Sheet& sheet, const BendMark& mark, const std::optional<AnglePlace>& place) {
    const double u = sheet.unit();
    const MeasuredBend now = measured(sheet.recording, sheet.state, mark);
    if (!has_arc(now)) return;
    const std::vector<CalloutLine> lines = angle_words(sheet, mark);
    const AngleArc a = angle_arc(sheet.recording, sheet.view, now, u);
    if (place) {
        if (!is_shown(sheet, *place)) return;
        const Rect plate = plate_in(sheet, *place, lines);
        add_plate(sheet, plate, sheet.colours.rule);
        add_lines(sheet, lines, plate, place->anchor == Anchor::right ? Across::right : Across::left);
        return;
    }
    if (are_placed(sheet)) return;  // no place is free for the whole stroke; the panel shows the same
    const double beyond =
        bend_under_load(sheet, mark) ? 0.9 * u : 0.2 * u;  // the arc under load, if there is one
    add_callout(sheet, lines, on_arc(a, a.radius + beyond, a.middle()), a.middle(), 0.6 * u,
                sheet.colours.rule);
}

using DoWithBend = void (*)(Sheet&, const BendMark&, const std::optional<AnglePlace>&);

void for_each_bend(Sheet& sheet, DoWithBend add) {
    if (sheet.info.angles == Angles::hidden || sheet.info.motion) return;
    for (std::size_t b = 0; b < sheet.info.bends.size(); ++b)
        add(sheet, sheet.info.bends[b], place_of(sheet, b));
}

}  // namespace

void add_angle_lines(Sheet& sheet) {
    for_each_bend(sheet, add_angle_lines);
}

void keep_angles_clear(Sheet& sheet) {
    for_each_bend(sheet, [](Sheet& s, const BendMark&, const std::optional<AnglePlace>& place) {
        if (place) s.taken.push_back(place->box);
    });
}

void add_angle_words(Sheet& sheet) {
    for_each_bend(sheet, add_angle_words);
}

}  // namespace overbend::picture
