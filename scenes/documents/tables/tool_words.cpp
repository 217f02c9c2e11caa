#include "scenes/documents/tables/tool_words.h"

#include <cmath>

#include "sim/units.h"
#include "sim/words.h"

namespace overbend::documents {

std::string figures_words(const files::Tool& tool) {
    return files::kind_of(tool.shape).figures(tool.shape);
}

std::string die_words(const files::Case& c, const files::Step& step) {
    const files::Tool& die = c.tools[step.die];
    return "'" + die.name + "'" + (files::face_count(die) > 1 ? words(", face %d", step.die_face) : "");
}

std::string stop_words(const files::Case& c, const files::Step& step) {
    switch (step.stop) {
        case files::StopKind::drawing_angle:
            return words("the drawing's angle free (%.4g\u00b0)",
                         std::abs(c.part.bends[step.bends.front()].angle) / degree);
        case files::StopKind::free_angle:
            return words("%.4g\u00b0 free", step.stop_value / degree);
        case files::StopKind::travel:
            return words("travel of %.4g mm", step.stop_value);
        case files::StopKind::force:
            return words("force of %.4g kN", step.stop_value);
        case files::StopKind::gap:
            return words("gap of %.4g mm", step.stop_value);
    }
    return "";
}

}  // namespace overbend::documents
