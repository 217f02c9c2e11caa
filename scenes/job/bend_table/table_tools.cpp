#include "scenes/job/bend_table/table_tools.h"

#include <algorithm>

#include "sim/words.h"

namespace overbend::job {

namespace {

// Sizes of a V die's face or an open die; false: it is another kind.
bool take_sizes(TableTools& t) {
    const auto* punch = std::get_if<tool::VeePunch>(&t.punch.shape);
    if (!punch) return false;
    t.nose_radius = punch->nose_radius;
    if (const auto* vee = std::get_if<tool::VeeDie>(&t.die.shape)) {
        const tool::VeeFace& face = vee->faces.at(static_cast<std::size_t>(t.die_face - 1));
        t.die_opening = face.die_opening, t.shoulder_radius = face.shoulder_radius;
        return true;
    }
    const auto* open = std::get_if<tool::OpenDie>(&t.die.shape);
    if (open) t.die_opening = open->die_opening, t.shoulder_radius = open->shoulder_radius;
    return open != nullptr;
}

}  // namespace

TableTools table_tools(const VeeBend& bend) {
    const StripCase made = vee_case(bend);
    TableTools t;
    t.name = words("die opening %.4g mm, shoulders %.4g, nose %.4g", bend.die_opening, bend.shoulder_radius,
                   bend.nose_radius);
    t.punch = made.job.tools.at(0), t.die = made.job.tools.at(1);
    take_sizes(t);
    return t;
}

std::vector<TableTools> table_tools(const files::Case& c) {
    std::vector<TableTools> found;
    for (const files::Step& step : c.steps) {
        TableTools t;
        t.punch = c.tools[step.punch], t.die = c.tools[step.die], t.die_face = step.die_face;
        if (step.bends.size() != 1 || !take_sizes(t)) continue;
        t.name = t.punch.name + " in " + t.die.name +
                 (files::face_count(t.die) > 1 ? ", face " + std::to_string(t.die_face) : "");
        t.name += words(" (opening %.4g mm, shoulders %.4g, nose %.4g)", t.die_opening, t.shoulder_radius,
                        t.nose_radius);
        const bool again =
            std::any_of(found.begin(), found.end(), [&](const TableTools& o) { return o.name == t.name; });
        if (!again) found.push_back(std::move(t));
    }
    return found;
}

}  // namespace overbend::job
