// Bend angles on the stage: an arc from one flat's run-on line to the other flat, with its number; while the
// strip springs back, the arc under load beside it.

#include <algorithm>
#include <cmath>

#include "render/picture/stage_parts.h"
#include "render/picture/text_width.h"

namespace overbend::render {

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double angle_seen = 0.035;  // rad: below two degrees there is no arc to be seen

std::string in_degrees(double angle) {
    return fixed(degrees(std::abs(angle)), 1) + "\u00b0";
}

// An arc from one flat's run-on line to the other flat, as seen on the picture (y down).
struct AngleArc {
    Point corner = Point::Zero();
    double from = 0.0;  // direction of the run-on line
    double to = 0.0;    // direction of the flat
    double radius = 0.0;
};

AngleArc angle_arc(const Sheet& sheet, const MeasuredBend& bend, double radius) {
    AngleArc arc;
    arc.corner = sheet.view.on_picture(bend.corner);
    arc.radius = radius;
    // A bend left of the punch's axis is measured on its left, so that the arc stands outside the tools'
    // middle.
    if (bend.corner.x() < -0.5 * sheet.recording.thickness) {
        arc.from = pi - bend.right.theta;
        arc.to = pi - bend.left.theta;
    } else {
        arc.from = -bend.left.theta;
        arc.to = -bend.right.theta;
    }
    return arc;
}

Point on_arc(const AngleArc& a, double radius, double direction) {
    return a.corner + radius * Point(std::cos(direction), std::sin(direction));
}

// As wide as the shorter flat allows, and not out of the stage.
double arc_radius(const Sheet& sheet, const MeasuredBend& bend) {
    const double u = sheet.unit();
    const double flat = (bend.right.at - bend.corner).norm() * sheet.view.scale;
    double radius = std::min(7.0 * u, std::max(4.0 * u, 0.9 * flat));
    const AngleArc whole = angle_arc(sheet, bend, radius);
    const Rect room = grown(sheet.view.stage, -2.0 * u);
    for (const double direction : {whole.from, whole.to}) {
        const double down = std::sin(direction);
        if (down > 0.1) radius = std::min(radius, (room.bottom() - whole.corner.y()) / down);
        if (down < -0.1) radius = std::min(radius, (room.y - whole.corner.y()) / down);
    }
    return std::max(2.5 * u, radius);
}

// The moment whose bend angle is shown beside that of now.
std::optional<MeasuredBend> bend_under_load(const Sheet& sheet, const BendMark& mark) {
    if (!sheet.info.ghost) return {};
    return measured(sheet.recording, state_at(sheet.recording, *sheet.info.ghost), mark);
}

void add_angle_lines(Sheet& sheet, const BendMark& mark) {
    const double u = sheet.unit();
    const double thin = 1.4 * sheet.layout.line;
    const std::vector<double> dash{0.5 * u, 0.35 * u};
    const MeasuredBend now = measured(sheet.recording, sheet.state, mark);
    if (!has_arc(now)) return;
    const AngleArc a = angle_arc(sheet, now, arc_radius(sheet, now));
    add_cased_line(sheet, polyline({a.corner, on_arc(a, a.radius + 1.2 * u, a.from)}), sheet.colours.ink,
                   thin, dash);
    add_cased_line(sheet, arc(a.corner, a.radius, a.from, a.to), sheet.colours.ink, 1.5 * thin);
    for (int i = 0; i <= 12; ++i)
        sheet.arcs.push_back(on_arc(a, a.radius, a.from + i / 12.0 * (a.to - a.from)));
    const std::optional<MeasuredBend> was = bend_under_load(sheet, mark);
    if (!was) return;
    const AngleArc b = angle_arc(sheet, *was, a.radius + 0.7 * u);
    add_cased_line(sheet, arc(b.corner, b.radius, b.from, b.to), sheet.colours.loaded, 1.5 * thin, dash);
}

void add_angle_words(Sheet& sheet, const BendMark& mark) {
    const double u = sheet.unit();
    const MeasuredBend now = measured(sheet.recording, sheet.state, mark);
    if (!has_arc(now)) return;
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
    lines.push_back({name + lead + in_degrees(angle), colour, Weight::bold});
    if (was && !sheet.layout.narrow)
        lines.push_back({"under load " + in_degrees(was->angle), sheet.colours.loaded, Weight::bold});
    const AngleArc a = angle_arc(sheet, now, arc_radius(sheet, now));
    const double middle = 0.5 * (a.from + a.to);
    add_callout(sheet, lines, on_arc(a, a.radius + (was ? 0.9 : 0.2) * u, middle), middle, 0.6 * u,
                sheet.colours.rule);
}

}  // namespace

bool has_arc(const MeasuredBend& bend) {
    return std::abs(bend.angle) >= angle_seen;
}

void add_angle_lines(Sheet& sheet) {
    if (sheet.info.angles == Angles::hidden || sheet.info.motion) return;
    for (const BendMark& mark : sheet.info.bends) add_angle_lines(sheet, mark);
}

void add_angle_words(Sheet& sheet) {
    if (sheet.info.angles == Angles::hidden || sheet.info.motion) return;
    for (const BendMark& mark : sheet.info.bends) add_angle_words(sheet, mark);
}

}  // namespace overbend::render
