#include "scenes/files/case/kinds.h"

#include <algorithm>
#include <cmath>

#include "render/drawing/measurer.h"
#include "scenes/files/case/usual_sizes.h"
#include "sim/errors.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::files {

using drawing::Beside;
using tool::Vec2;

namespace {

double usual_width(const tool::VeeDie& die) {
    double widest = 0.0;
    for (const tool::VeeFace& face : die.faces)
        widest = std::max(widest, usual_die_width(face.die_opening, face.shoulder_radius));
    return widest;
}

double usual_height(const tool::VeeDie& die) {
    double depths = 0.0;
    try {
        for (const tool::VeeFace& face : die.faces) depths += tool::groove_depth(face);
    } catch (const OutOfRange&) {  // a groove that cannot be is refused with its die
        depths = 0.0;
    }
    return usual_die_height(depths);
}

void measure_relief(const drawing::Measurer& m, const tool::Relief& r) {
    const double side = r.side == tool::Side::right ? 1.0 : -1.0;
    const Beside beside = side > 0.0 ? Beside::right : Beside::left;
    const double edge = side > 0.0 ? m.box.high.x() : m.box.low.x();
    const double face = -side * r.set_back;
    const double middle = 0.5 * (r.from + r.to);
    // where the relief's inclined faces meet the sides is on the outline: the nearest corners at these
    // heights
    const auto x_at = [&](double y) {
        double best = edge, off = 1e9;
        for (const tool::Piece& piece : m.sheet.outlines.front())
            if (std::abs(piece.start.y() - y) < off - 1e-9 && side * piece.start.x() > side * face - 1e-9)
                off = std::abs(piece.start.y() - y), best = piece.start.x();
        return best;
    };
    m.upright({0.0, 0.0}, {x_at(r.from), r.from}, beside);
    m.upright({0.0, 0.0}, {x_at(r.to), r.to}, beside);
    if (std::abs(r.set_back) > 1e-9) m.across({0.0, middle}, {face, middle}, Beside::below, {middle});
    m.note("Relief: faces at 45\u00b0, neck at least " + m.plain(r.neck) + " thick.");
}

// An opening is given between the arcs' centres, or as catalogues often have it.
// angle: of the groove
void opening(Fields& f, const char* example, double& value, double shoulder_radius, double angle) {
    f.number_either(
        {"opening_mm", example, "Between the centres of the shoulders' arcs"},
        {"opening_at_corners_mm", example,
         "The same opening between the corners, where flanks and top face would meet without arcs"},
        size, value, 2.0 * tool::corner_to_centre(shoulder_radius, angle));
}

std::string opening_words(double value, double shoulder_radius, double angle) {
    return words(
        "opening %.4g mm between its arcs' centres (%.4g mm at its corners), shoulder radius %.4g mm", value,
        value - 2.0 * tool::corner_to_centre(shoulder_radius, angle), shoulder_radius);
}

// top: y of the face; up: 1 where the groove opens upwards, -1 where it hangs below.
void measure_groove(const drawing::Measurer& m, const tool::VeeFace& face, double top, double up) {
    const double half = 0.5 * face.angle, s = std::sin(half), c = std::cos(half);
    const double middle = 0.5 * face.die_opening;
    const double apex = (face.shoulder_radius - c * middle) / s - face.shoulder_radius;
    const double from = face.bottom_radius / std::tan(half);
    const double to = s * middle + c * (-face.shoulder_radius - apex);
    m.across({-middle, top}, {middle, top}, up > 0.0 ? Beside::above : Beside::below);
    m.angle({0.0, top + up * apex}, up > 0.0 ? 0.5 * pi - half : 1.5 * pi - half, face.angle, from, to, from,
            to);
}

}  // namespace

// ---- the tables within

void describe(Fields& f, tool::Relief& t) {
    f.word({"side", "\"right\"", "Side of the punch as it stands in the press"}, {"left", "right"}, t.side);
    f.number({"from_mm", "12.0", "Where it begins, above the nose"}, size, t.from);
    f.number({"to_mm", "40.0", "Where it ends, above the nose"}, size, t.to);
    f.number({"set_back_mm", "2.0", "Distance of its face past the punch's axis; negative: short of it"},
             coordinate, t.set_back);
    f.number({"neck_mm", "8.0", "Least thickness of the neck behind it"}, size, t.neck);
    f.number_or({"root_radius_mm", "2.0", "Radius of its two inner corners"}, size_or_none, t.root_radius,
                {0.0});
}

void describe(Fields& f, tool::VeeFace& t) {
    f.number({"angle_deg", "85.0", "Included angle of the groove"}, groove_angle, t.angle);
    f.number_or({"shoulder_radius_mm", "1.0", "Radius of the shoulders"}, size, t.shoulder_radius, {1.0});
    opening(f, "8.0", t.die_opening, t.shoulder_radius, t.angle);
    f.number_or({"bottom_radius_mm", "0.4", "Radius at the bottom of the groove"}, size_or_none,
                t.bottom_radius, {0.4});
}

// ---- vee-punch

void describe(Fields& f, tool::VeePunch& t) {
    f.number({"angle_deg", "60.0", "Included angle of the wedge"}, groove_angle, t.angle);
    f.number({"nose_radius_mm", "1.0", "Radius of the nose"}, size, t.nose_radius);
    f.number_or({"shank_width_mm", "12.0", "Width of the shank"}, size, t.shank_width,
                {usual_shank_width(t.nose_radius), "12, or twice the nose radius plus 2 if that is more"});
    f.number_or({"height_mm", "80.0", "From the nose to the top of the shank"}, size, t.height,
                {usual_punch_height});
    f.table_if(
        {"relief", "{ side = \"right\", from_mm = 12.0, to_mm = 40.0, set_back_mm = 2.0, neck_mm = 8.0 }",
         "Room cut out of one side for a return flange"},
        t.relief);
}

std::string figures(const tool::VeePunch& t) {
    return words("wedge of %.4g\u00b0, nose radius %.4g mm", t.angle / degree, t.nose_radius) +
           (t.relief
                ? words(", relieved on the %s from %.4g to %.4g mm",
                        t.relief->side == tool::Side::left ? "left" : "right", t.relief->from, t.relief->to)
                : "");
}

void measure(const drawing::Measurer& m, const tool::VeePunch& t) {
    const double half = 0.5 * t.angle, s = std::sin(half);
    const Vec2 apex(0.0, t.nose_radius - t.nose_radius / s);
    double flank = 0.5 * t.shank_width / s;
    if (t.relief) flank = std::min(flank, (t.relief->from - apex.y()) / std::cos(half));
    const double tangent = t.nose_radius / std::tan(half);
    m.axis();
    m.angle(apex, 0.5 * pi - half, t.angle, tangent, flank, tangent, flank);
    const double top = 0.5 * t.shank_width;
    m.across({-top, t.height}, {top, t.height}, Beside::above);
    m.upright({m.box.high.x(), 0.0}, {top, t.height}, Beside::right);
    if (!t.relief) return;
    measure_relief(m, *t.relief);
    // the neck may stand out from the shank
    const double side = t.relief->side == tool::Side::right ? -1.0 : 1.0;
    const double back = side > 0.0 ? m.box.high.x() : -m.box.low.x();
    // over all, from the corner below the relief to where the neck's back begins
    if (back > top + 1e-6)
        m.across({side > 0.0 ? m.box.low.x() : m.box.high.x(), t.relief->from},
                 {side * back, apex.y() + back / std::tan(half)}, Beside::below);
}

Kind vee_punch() {
    return kind<tool::VeePunch>("vee-punch", Stands::punch, Work::vee, describe, figures, measure);
}

// ---- vee-die

void describe(Fields& f, tool::VeeDie& t) {
    f.tables({"faces", "[ { angle_deg = 85.0, opening_mm = 8.0 } ]",
              "Its grooves, one or two, each on its own face"},
             t.faces);
    die_width(f, "40.0", t.width, usual_width(t));
    f.number_or({"height_mm", "60.0", "Height of the block"}, size, t.height,
                {usual_height(t), "1.5 times the depth of its grooves plus 25"});
}

std::string figures(const tool::VeeDie& t) {
    std::string text;
    for (std::size_t i = 0; i < t.faces.size(); ++i) {
        const tool::VeeFace& f = t.faces[i];
        if (t.faces.size() > 1) text += words("%sface %zu: ", i > 0 ? "; " : "", i + 1);
        text += words("groove of %.4g\u00b0, ", f.angle / degree) +
                opening_words(f.die_opening, f.shoulder_radius, f.angle);
    }
    return text;
}

void measure(const drawing::Measurer& m, const tool::VeeDie& t) {
    m.axis();
    measure_groove(m, t.faces[0], 0.0, 1.0);
    if (t.faces.size() > 1) measure_groove(m, t.faces[1], -t.height, -1.0);
    m.size(t.faces.size() > 1 ? Beside::above : Beside::below);
    if (t.faces.size() > 1) m.note("Face 1 is drawn above, face 2 below.");
    std::string corners;
    for (const tool::VeeFace& face : t.faces)
        corners += (corners.empty() ? "" : " and ") +
                   m.plain(face.die_opening - 2.0 * tool::corner_to_centre(face.shoulder_radius, face.angle));
    m.note("Openings: between the centres of the shoulder radii; between the corners " + corners + ".");
}

Kind vee_die() {
    return kind<tool::VeeDie>("vee-die", Stands::die, Work::vee, describe, figures, measure,
                              tool::make_outline);
}

// ---- open-die

void describe(Fields& f, tool::OpenDie& t) {
    shoulder(f, t.shoulder_radius);
    opening(f, "12.0", t.die_opening, t.shoulder_radius, 0.0);
    f.number_or({"depth_mm", "25.0", "Depth of the slot"}, size, t.depth,
                {2.0 * t.die_opening, "2 openings"});
    die_width(f, "40.0", t.width, usual_die_width(t.die_opening, t.shoulder_radius));
}

std::string figures(const tool::OpenDie& t) {
    return opening_words(t.die_opening, t.shoulder_radius, 0.0);
}

void measure(const drawing::Measurer& m, const tool::OpenDie& t) {
    const double middle = 0.5 * t.die_opening, wall = middle - t.shoulder_radius;
    m.axis();
    m.across({-middle, 0.0}, {middle, 0.0}, Beside::above);
    m.upright({wall, 0.0}, {0.5 * wall, -t.depth}, Beside::left, {0.5 * wall});
    m.size(Beside::below);
    m.note("Opening: between the centres of the shoulder radii; between the corners " +
           m.plain(t.die_opening - 2.0 * t.shoulder_radius) + ".");
}

Kind open_die() {
    return kind<tool::OpenDie>("open-die", Stands::die, Work::vee, describe, figures, measure);
}

}  // namespace overbend::files
