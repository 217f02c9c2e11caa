#include "scenes/files/case/case.h"

namespace overbend::files {

std::vector<int> Step::tools() const {
    std::vector<int> all = {punch, die};
    if (pad) all.push_back(*pad);
    if (clamp) all.push_back(*clamp);
    return all;
}

int face_count(const Tool& tool) {
    const auto* vee = std::get_if<tool::VeeDie>(&tool.shape);
    return vee ? static_cast<int>(vee->faces.size()) : 1;
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
