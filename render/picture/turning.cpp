#include "render/picture/turning.h"

namespace overbend::picture {

const TurningWords& turning_words(Turning turning) {
    static const TurningWords words[] = {
        {"", "the part is moved to its next bend", "", "As in the previous stroke."},
        {"turn end for end", "the part is turned end for end", "turned end for end",
         "From the previous stroke: turn it end for end; the same face stays up."},
        {"roll over", "the part is turned over, other face up", "turned over",
         "From the previous stroke: roll it over about its length; left and right ends stay where they are."},
        {"tip over", "the part is turned end for end and over", "turned over and end for end",
         "From the previous stroke: tip it over end for end, so that its other face points up."}};
    return words[static_cast<int>(turning)];
}

std::string lying_words(const ShownStroke& stroke) {
    return std::string(stroke.upper_face_up ? "upper" : "lower") + " face up, " +
           (stroke.left_end_left ? "left" : "right") + " end to the left";
}

}  // namespace overbend::picture
