#include "scenes/files/case/kinds.h"

#include <cmath>

#include "render/drawing/measurer.h"
#include "scenes/files/case/usual_sizes.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::files {

using drawing::Beside;
using tool::Vec2;

namespace {

// lower, upper: the sharp corners that the inclined face runs between.
void measure_step(const drawing::Measurer& m, double offset, double bend_angle, double lower_radius,
                  double upper_radius, const Vec2& lower, const Vec2& upper) {
    const double face = offset / std::sin(bend_angle), turn = std::tan(0.5 * bend_angle);
    const double right = m.box.high.x() - upper.x();
    // between the lower land run on to the right, and the face
    m.angle(lower, 0.0, bend_angle, face + right, face + right, lower_radius * turn,
            face - upper_radius * turn);
}

}  // namespace

// ---- offset-punch

void describe(Fields& f, tool::OffsetPunch& t) {
    f.number({"offset_mm", "5.0", "Step between the lands"}, size, t.offset);
    f.number({"angle_deg", "45.0", "Bend angle of the sloped face"}, offset_angle, t.angle);
    f.number({"nose_radius_mm", "1.0", "Radius of the low land's convex corner"}, size_or_none,
             t.nose_radius);
    f.number_or({"root_radius_mm", "0.5", "Radius of the high land's concave corner"}, size_or_none,
                t.root_radius, {0.5});
    f.number({"clearance_mm", "1.05", "Between the faces of the closed tools"}, size, t.clearance);
    f.number_or({"land_mm", "15.0", "Length of each land"}, size, t.land, {15.0});
    f.number_or({"height_mm", "50.0", "Height above the high land"}, size, t.height, {50.0});
}

std::string figures(const tool::OffsetPunch& t) {
    return words("step of %.4g mm at %.4g\u00b0, nose radius %.4g mm", t.offset, t.angle / degree,
                 t.nose_radius);
}

void measure(const drawing::Measurer& m, const tool::OffsetPunch& t) {
    // the low land is at y = 0 on the left, the high one at y = offset on the right
    const double half = 0.5 * t.offset / std::tan(t.angle);
    const double lower = m.box.low.x() + t.land, upper = lower + 2.0 * half;
    measure_step(m, t.offset, t.angle, t.nose_radius, t.root_radius, {lower, 0.0}, {upper, t.offset});
    m.across({m.box.low.x(), 0.0}, {lower, 0.0}, Beside::below);
    m.upright({lower, 0.0}, {m.box.high.x(), t.offset}, Beside::right);
    m.upright({m.box.high.x(), t.offset}, {m.box.high.x(), m.box.high.y()}, Beside::right);
    m.across({m.box.low.x(), m.box.high.y()}, {m.box.high.x(), m.box.high.y()}, Beside::above);
    m.note("Closes to " + m.plain(t.clearance) +
           " mm from the faces of its die. Lands: to the sharp corners.");
}

Kind offset_punch() {
    return kind<tool::OffsetPunch>("offset-punch", Stands::punch, Work::offset, describe, figures, measure);
}

// ---- offset-die

void describe(Fields& f, tool::OffsetDie& t) {
    f.number({"offset_mm", "5.0", "Step between the lands"}, size, t.offset);
    f.number({"angle_deg", "45.0", "Bend angle of the sloped face"}, offset_angle, t.angle);
    f.number({"shoulder_radius_mm", "1.0", "Radius of the high land's convex corner"}, size_or_none,
             t.shoulder_radius);
    f.number_or({"root_radius_mm", "0.5", "Radius of the low land's concave corner"}, size_or_none,
                t.root_radius, {0.5});
    f.number_or({"land_mm", "15.0", "Length of each land"}, size, t.land, {15.0});
    f.number_or({"height_mm", "40.0", "Height below the low land"}, size, t.height, {40.0});
}

std::string figures(const tool::OffsetDie& t) {
    return words("step of %.4g mm at %.4g\u00b0, shoulder radius %.4g mm", t.offset, t.angle / degree,
                 t.shoulder_radius);
}

void measure(const drawing::Measurer& m, const tool::OffsetDie& t) {
    const double half = 0.5 * t.offset / std::tan(t.angle);
    measure_step(m, t.offset, t.angle, t.root_radius, t.shoulder_radius, {-half, -t.offset}, {half, 0.0});
    m.across({half, 0.0}, {m.box.high.x(), 0.0}, Beside::above);
    m.upright({m.box.low.x(), -t.offset}, {half, 0.0}, Beside::left);
    m.upright({m.box.low.x(), -t.offset}, {m.box.low.x(), m.box.low.y()}, Beside::left);
    m.across({m.box.low.x(), m.box.low.y()}, {m.box.high.x(), m.box.low.y()}, Beside::below);
    m.note("Lands: to the sharp corners.");
}

Kind offset_die() {
    return kind<tool::OffsetDie>("offset-die", Stands::die, Work::offset, describe, figures, measure);
}

}  // namespace overbend::files
