#include "scenes/documents/drawings/tool_views.h"

#include <algorithm>
#include <cmath>

#include "sim/units.h"

namespace overbend::documents {

using drawing::Beside;
using drawing::Dimension;
using drawing::Measure;
using tool::Vec2;

void ToolMeasurer::across(const Vec2& from, const Vec2& to, Beside beside, std::vector<double> lanes) const {
    Dimension d;
    d.measure = Measure::across;
    d.from = from;
    d.to = to;
    d.beside = beside;
    d.lanes = std::move(lanes);
    d.words = length_words(std::abs(to.x() - from.x()), tolerances);
    sheet.dimensions.push_back(std::move(d));
}

void ToolMeasurer::upright(const Vec2& from, const Vec2& to, Beside beside, std::vector<double> lanes) const {
    Dimension d;
    d.measure = Measure::upright;
    d.from = from;
    d.to = to;
    d.beside = beside;
    d.lanes = std::move(lanes);
    d.words = length_words(std::abs(to.y() - from.y()), tolerances);
    sheet.dimensions.push_back(std::move(d));
}

void ToolMeasurer::angle(const Vec2& vertex, double start, double sweep, double first_from, double first_to,
                         double second_from, double second_to) const {
    Dimension d;
    d.measure = Measure::angle;
    d.centre = vertex;
    d.start = start;
    d.sweep = sweep;
    d.first_from = first_from;
    d.first_to = first_to;
    d.second_from = second_from;
    d.second_to = second_to;
    d.words = angle_words(sweep, std::min(first_to - first_from, second_to - second_from), tolerances);
    sheet.dimensions.push_back(std::move(d));
}

void ToolMeasurer::axis() const {
    const double past = 0.04 * (box.high.y() - box.low.y());
    sheet.lines.push_back({Vec2(0.0, box.low.y() - past), Vec2(0.0, box.high.y() + past)});
}

void ToolMeasurer::size(Beside width_beside) const {
    const double y = width_beside == Beside::above ? box.high.y() : box.low.y();
    across({box.low.x(), y}, {box.high.x(), y}, width_beside);
    upright(box.low.x() < box.high.x() ? Vec2(box.high.x(), box.low.y()) : Vec2(box.low.x(), box.low.y()),
            {box.high.x(), box.high.y()}, Beside::right);
}

void ToolMeasurer::relief(const tool::Relief& r) const {
    const double side = r.side == tool::Side::right ? 1.0 : -1.0;
    const Beside beside = side > 0.0 ? Beside::right : Beside::left;
    const double edge = side > 0.0 ? box.high.x() : box.low.x();
    const double face = -side * r.set_back;
    const double middle = 0.5 * (r.from + r.to);
    // where the relief's inclined faces meet the sides is on the outline: the nearest corners at these
    // heights
    const auto x_at = [&](double y) {
        double best = edge, off = 1e9;
        for (const tool::Piece& piece : sheet.outlines.front())
            if (std::abs(piece.start.y() - y) < off - 1e-9 && side * piece.start.x() > side * face - 1e-9)
                off = std::abs(piece.start.y() - y), best = piece.start.x();
        return best;
    };
    upright({0.0, 0.0}, {x_at(r.from), r.from}, beside);
    upright({0.0, 0.0}, {x_at(r.to), r.to}, beside);
    if (std::abs(r.set_back) > 1e-9) across({0.0, middle}, {face, middle}, Beside::below, {middle});
    sheet.notes.push_back("Relief: faces at 45\u00b0, neck at least " +
                          length_words(r.neck, Tolerances::none) + " thick.");
}

void ToolMeasurer::operator()(const tool::VeePunch& t) const {
    const double half = 0.5 * t.angle, s = std::sin(half);
    const Vec2 apex(0.0, t.nose_radius - t.nose_radius / s);
    double flank = 0.5 * t.shank_width / s;
    if (t.relief) flank = std::min(flank, (t.relief->from - apex.y()) / std::cos(half));
    const double tangent = t.nose_radius / std::tan(half);
    axis();
    angle(apex, 0.5 * pi - half, t.angle, tangent, flank, tangent, flank);
    const double top = 0.5 * t.shank_width;
    across({-top, t.height}, {top, t.height}, Beside::above);
    upright({box.high.x(), 0.0}, {top, t.height}, Beside::right);
    if (!t.relief) return;
    relief(*t.relief);
    // the neck may stand out from the shank
    const double side = t.relief->side == tool::Side::right ? -1.0 : 1.0;
    const double back = side > 0.0 ? box.high.x() : -box.low.x();
    // over all, from the corner below the relief to where the neck's back begins
    if (back > top + 1e-6)
        across({side > 0.0 ? box.low.x() : box.high.x(), t.relief->from},
               {side * back, apex.y() + back / std::tan(half)}, Beside::below);
}

// top: y of the face; up: 1 where the groove opens upwards, -1 where it hangs below.
void ToolMeasurer::groove(const tool::VeeFace& face, double top, double up) const {
    const double half = 0.5 * face.angle, s = std::sin(half), c = std::cos(half);
    const double middle = 0.5 * face.die_opening;
    const double apex = (face.shoulder_radius - c * middle) / s - face.shoulder_radius;
    const double from = face.bottom_radius / std::tan(half);
    const double to = s * middle + c * (-face.shoulder_radius - apex);
    across({-middle, top}, {middle, top}, up > 0.0 ? Beside::above : Beside::below);
    angle({0.0, top + up * apex}, up > 0.0 ? 0.5 * pi - half : 1.5 * pi - half, face.angle, from, to, from,
          to);
}

void ToolMeasurer::operator()(const tool::VeeDie& t) const {
    axis();
    groove(t.faces[0], 0.0, 1.0);
    if (t.faces.size() > 1) groove(t.faces[1], -t.height, -1.0);
    size(t.faces.size() > 1 ? Beside::above : Beside::below);
    if (t.faces.size() > 1) sheet.notes.push_back("Face 1 is drawn above, face 2 below.");
    sheet.notes.push_back("Openings: between the centres of the shoulder radii.");
}

void ToolMeasurer::operator()(const tool::OpenDie& t) const {
    const double middle = 0.5 * t.die_opening, wall = middle - t.shoulder_radius;
    axis();
    across({-middle, 0.0}, {middle, 0.0}, Beside::above);
    upright({wall, 0.0}, {0.5 * wall, -t.depth}, Beside::left, {0.5 * wall});
    size(Beside::below);
    sheet.notes.push_back("Opening: between the centres of the shoulder radii.");
}

// lower, upper: the sharp corners that the inclined face runs between.
void ToolMeasurer::step(double offset, double bend_angle, double lower_radius, double upper_radius,
                        const Vec2& lower, const Vec2& upper) const {
    const double face = offset / std::sin(bend_angle), turn = std::tan(0.5 * bend_angle);
    const double right = box.high.x() - upper.x();
    // between the lower land run on to the right, and the face
    angle(lower, 0.0, bend_angle, face + right, face + right, lower_radius * turn,
          face - upper_radius * turn);
}

void ToolMeasurer::operator()(const tool::OffsetPunch& t) const {
    // the low land is at y = 0 on the left, the high one at y = offset on the right
    const double half = 0.5 * t.offset / std::tan(t.angle);
    const double lower = box.low.x() + t.land, upper = lower + 2.0 * half;
    step(t.offset, t.angle, t.nose_radius, t.root_radius, {lower, 0.0}, {upper, t.offset});
    across({box.low.x(), 0.0}, {lower, 0.0}, Beside::below);
    upright({lower, 0.0}, {box.high.x(), t.offset}, Beside::right);
    upright({box.high.x(), t.offset}, {box.high.x(), box.high.y()}, Beside::right);
    across({box.low.x(), box.high.y()}, {box.high.x(), box.high.y()}, Beside::above);
    sheet.notes.push_back("Closes to " + length_words(t.clearance, Tolerances::none) +
                          " mm from the faces of its die. Lands: to the sharp corners.");
}

void ToolMeasurer::operator()(const tool::OffsetDie& t) const {
    const double half = 0.5 * t.offset / std::tan(t.angle);
    step(t.offset, t.angle, t.root_radius, t.shoulder_radius, {-half, -t.offset}, {half, 0.0});
    across({half, 0.0}, {box.high.x(), 0.0}, Beside::above);
    upright({box.low.x(), -t.offset}, {half, 0.0}, Beside::left);
    upright({box.low.x(), -t.offset}, {box.low.x(), box.low.y()}, Beside::left);
    across({box.low.x(), box.low.y()}, {box.high.x(), box.low.y()}, Beside::below);
    sheet.notes.push_back("Lands: to the sharp corners.");
}

void ToolMeasurer::operator()(const tool::ChannelPunch& t) const {
    const double half = 0.5 * t.width;
    double left = box.high.x(), right = box.low.x();
    for (const tool::Piece& piece : sheet.outlines.front())
        if (piece.start.y() > t.height - 1e-6)
            left = std::min(left, piece.start.x()), right = std::max(right, piece.start.x());
    if (t.shank == tool::Shank::middle) axis();
    const double widest = t.corner_radius * (1.0 + std::sin(t.side_relief));
    across({-half, widest}, {half, widest}, Beside::below);
    if (t.shank_width < t.width - 1e-9) {
        across({left, t.height}, {right, t.height}, Beside::above);
        const bool step_left = t.shank != tool::Shank::left;
        const double top = half - (t.foot_height - t.corner_radius) * std::tan(t.side_relief);
        upright({step_left ? -half : half, 0.0}, {step_left ? -top : top, t.foot_height},
                step_left ? Beside::left : Beside::right);
    }
    upright({half, 0.0}, {right, t.height}, t.shank == tool::Shank::left ? Beside::left : Beside::right);
    if (t.side_relief > 0.0)
        sheet.notes.push_back("Sides of the foot slope inwards by " +
                              angle_words(t.side_relief, t.foot_height, tolerances) + ".");
}

void ToolMeasurer::operator()(const tool::ChannelDie& t) const {
    const double half = 0.5 * t.die_opening;
    axis();
    across({-half, 0.0}, {half, 0.0}, Beside::above);
    upright({half, 0.0}, {0.5 * half, -t.depth}, Beside::left, {0.5 * half});
    size(Beside::below);
    if (t.floor_crown > 0.0)
        sheet.notes.push_back("The middle of the floor is " + length_words(t.floor_crown, tolerances) +
                              " mm above its edges.");
}

void ToolMeasurer::operator()(const files::FlatPunch&) const {
    size(Beside::above);
}
void ToolMeasurer::operator()(const files::FlatDie&) const {
    size(Beside::below);
}
void ToolMeasurer::operator()(const files::WipingPunch& t) const {
    size(Beside::above);
    sheet.notes.push_back("Passes " + length_words(t.clearance, Tolerances::none) +
                          " mm beside the wall of its die.");
}
void ToolMeasurer::operator()(const files::WipingDie&) const {
    size(Beside::below);
}
void ToolMeasurer::operator()(const files::Pad&) const {
    size(Beside::below);
}
void ToolMeasurer::operator()(const files::Clamp&) const {
    size(Beside::above);
}
void ToolMeasurer::operator()(const files::OutlineTool& t) const {
    size(Beside::below);
    sheet.notes.push_back(
        t.file
            ? "The outline comes from its DXF file; only its overall dimensions and radii are given here."
            : "The outline comes from the DXF file; only its overall dimensions and radii are given here.");
}

}  // namespace overbend::documents
