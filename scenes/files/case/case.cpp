#include "scenes/files/case/case.h"

namespace overbend::files {

bool Tool::is_punch() const {
    const Stands stands = kind_of(shape).stands;
    return stands == Stands::punch || stands == Stands::punch_or_die;
}

bool Tool::is_die() const {
    const Stands stands = kind_of(shape).stands;
    return stands == Stands::die || stands == Stands::punch_or_die;
}

bool Tool::is_pad() const {
    return kind_of(shape).stands == Stands::pad;
}

bool Tool::is_clamp() const {
    return kind_of(shape).stands == Stands::clamp;
}

const char* kind_word(const Tool& tool) {
    return kind_of(tool.shape).word;
}

std::string kind_name(const Tool& tool) {
    std::string kind = kind_word(tool);
    for (char& c : kind)
        if (c == '-') c = ' ';
    if (kind.compare(0, 4, "vee ") == 0) kind.replace(0, 3, "V");
    return kind;
}

}  // namespace overbend::files
