#include "scenes/files/case/kinds.h"

#include "render/drawing/measurer.h"
#include "scenes/files/case/usual_sizes.h"
#include "sim/words.h"

namespace overbend::files {

using drawing::Beside;

// ---- radius-punch

void describe(Fields& f, tool::RadiusPunch& t) {
    f.number({"nose_radius_mm", "12.0", "Radius of the nose, from side to side"}, size, t.nose_radius);
    f.number_or({"width_mm", "20.0", "Width of the plate"}, size, t.width,
                {2.0 * t.nose_radius, "twice the nose radius"});
    f.number_or({"height_mm", "60.0", "From the nose to the top"}, size, t.height,
                {t.nose_radius + 50.0, "the nose radius plus 50"});
}

std::string figures(const tool::RadiusPunch& t) {
    return words("nose radius %.4g mm, %.4g mm wide", t.nose_radius, t.width);
}

void measure(const drawing::Measurer& m, const tool::RadiusPunch&) {
    m.axis();
    m.size(Beside::above);
}

Kind radius_punch() {
    return kind<tool::RadiusPunch>("radius-punch", Stands::punch, Work::radius, describe, figures, measure);
}

// ---- radius-die

void describe(Fields& f, tool::RadiusDie& t) {
    f.number({"groove_radius_mm", "13.0", "Radius of the groove"}, size, t.groove_radius);
    f.number({"opening_mm", "22.0", "Between the centres of the shoulders' arcs"}, size, t.die_opening);
    shoulder(f, t.shoulder_radius);
    die_width(f, "50.0", t.width, usual_die_width(t.die_opening, t.shoulder_radius));
    f.number_or({"height_mm", "40.0", "Height of the block"}, size, t.height,
                {t.groove_radius + 25.0, "the groove radius plus 25"});
}

std::string figures(const tool::RadiusDie& t) {
    return words("groove of radius %.4g mm, opening %.4g mm, shoulder radius %.4g mm", t.groove_radius,
                 t.die_opening, t.shoulder_radius);
}

void measure(const drawing::Measurer& m, const tool::RadiusDie& t) {
    const double half = 0.5 * t.die_opening;
    m.axis();
    m.across({-half, 0.0}, {half, 0.0}, Beside::above);
    m.upright({half, 0.0}, {0.0, -tool::groove_depth(t)}, Beside::left, {0.5 * half});
    m.size(Beside::below);
    m.note("Opening: between the centres of the shoulder radii.");
}

Kind radius_die() {
    return kind<tool::RadiusDie>("radius-die", Stands::die, Work::radius, describe, figures, measure);
}

}  // namespace overbend::files
