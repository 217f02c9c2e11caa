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
    constexpr const char* in_order[] = {"the drawing's angle free (%.4g\u00b0)", "%.4g\u00b0 free",
                                        "travel of %.4g mm", "force of %.4g kN", "gap of %.4g mm"};
    double value = step.stop_value;
    if (step.stop == files::StopKind::drawing_angle) value = std::abs(c.part.bends[step.bends.front()].angle);
    if (step.stop <= files::StopKind::free_angle) value /= degree;
    return words(in_order[static_cast<int>(step.stop)], value);
}

}  // namespace overbend::documents
