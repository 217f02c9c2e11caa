// A V stroke: one bend, round a nose over two shoulders.

#include "scenes/files/case/work.h"

#include <algorithm>
#include <cmath>

#include "sim/units.h"

namespace overbend::files {

namespace {

// How deep the nose goes until the tools have closed on the strip. A nose with the strip round it that fills
// the groove's bottom can squeeze it a little further.
double closed_depth(const tool::VeeFace& groove, const tool::VeePunch* punch, double thickness) {
    constexpr double squeezed = 0.8;  // thicknesses that are left, at least
    double further = (1.0 - squeezed) * thickness;
    if (punch) {
        const double sine = std::sin(0.5 * groove.angle);
        const double beside_bottom = groove.bottom_radius - punch->nose_radius;
        const double between_flanks = thickness * sine + beside_bottom * (1.0 - sine);  // at the full depth
        further = std::clamp((between_flanks - squeezed * thickness) / sine, 0.0, further);
    }
    return tool::groove_depth(groove) - thickness + further;
}

Hold vee_hold(const Case& c, const Blank& blank, const Step& step) {
    const Tool& die = c.tools[step.die];
    const Shoulders over = shoulders_of(die, step.die_face);
    const auto* punch = shape_of<tool::VeePunch>(c.tools[step.punch]);
    return hold_over(c, blank, step, over.opening, over.radius,
                     over.groove ? closed_depth(*over.groove, punch, c.thickness)
                                 : std::get<tool::OpenDie>(die.shape).depth - c.thickness);
}

void vee_set_path(const Case& c, const Blank&, const Step& step, plan::StrokePath& path) {
    const Shoulders over = shoulders_of(c.tools[step.die], step.die_face);
    path.kind = plan::StrokeKind::vee;
    path.nose = made_radius(c, step, std::get<tool::VeePunch>(c.tools[step.punch].shape).nose_radius);
    path.shoulder = over.radius;
    path.shoulder_x = 0.5 * over.opening;
}

Shortfall vee_misfit(const Case& c, const Blank& blank, const Step& step) {
    const auto* punch = shape_of<tool::VeePunch>(c.tools[step.punch]);
    const auto* groove = shoulders_of(c.tools[step.die], step.die_face).groove;
    if (!punch || !groove) return {};
    return closes_early(tool::largest_bend_angle(*punch, *groove, c.thickness),
                        stroke_path(c, blank, step).loaded);
}

std::string vee_overbend(Tool& punch, Tool& die, int die_face, double more, MayChange may) {
    constexpr double least_groove = 20.0 * degree;  // sharper punches break; common practice, no source
    auto* vee = std::get_if<tool::VeeDie>(&die.shape);
    auto* wedge = std::get_if<tool::VeePunch>(&punch.shape);
    if (!may.die || !vee || !wedge) return "";
    tool::VeeFace& groove = vee->faces[die_face - 1];
    const double angle = groove.angle - whole_degrees_up(more);
    if (angle < least_groove || (wedge->angle > angle && !may.punch)) return "";
    groove.angle = angle;
    wedge->angle = std::min(wedge->angle, angle);
    return overbend_words(die, "a groove", angle);
}

double* vee_nose(Tool& tool) {
    auto* wedge = std::get_if<tool::VeePunch>(&tool.shape);
    return wedge ? &wedge->nose_radius : nullptr;
}

}  // namespace

double Shoulders::opening_at_corners() const {
    return opening - 2.0 * tool::corner_to_centre(radius, groove ? groove->angle : 0.0);
}

Shoulders shoulders_of(const Tool& die, int die_face) {
    if (const auto* vee = shape_of<tool::VeeDie>(die)) {
        const tool::VeeFace& groove = vee->faces[die_face - 1];
        return {groove.die_opening, groove.shoulder_radius, &groove};
    }
    if (const auto* open = shape_of<tool::OpenDie>(die))
        return {open->die_opening, open->shoulder_radius, nullptr};
    return {};
}

WorkKind vee_work() {
    WorkKind work;
    work.work = Work::vee;
    work.stroke = "a V stroke";
    work.agreed = 0.1 * degree;
    work.bends = 1;
    work.hold = vee_hold;
    work.set_path = vee_set_path;
    work.misfit = vee_misfit;
    work.overbend = vee_overbend;
    work.nose = vee_nose;
    return work;
}

}  // namespace overbend::files
