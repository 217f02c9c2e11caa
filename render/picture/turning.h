// How the strip is turned between two strokes, in words.

#pragma once

#include <string>

#include "render/picture/shown_job.h"

namespace overbend::picture {

struct TurningWords {
    const char* sign;     // beside its sign: "roll over"; empty when it is not turned
    const char* happens;  // in a film's caption: "the part is turned over, other face up"
    const char* done;     // "turned over"; empty when it is not turned
    const char* to_do;    // a sentence for a person at the press
};
const TurningWords& turning_words(Turning turning);

// How the strip lies, in one cell: "upper face up, left end to the left".
std::string lying_words(const ShownStroke& stroke);

}  // namespace overbend::picture
