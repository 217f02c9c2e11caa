#include "scenes/files/case/case.h"

#include <array>

namespace overbend::files {

namespace {

template <class Shape>
bool is(const Tool& tool) {
    return std::holds_alternative<Shape>(tool.shape);
}

}  // namespace

bool Tool::is_punch() const {
    return is<tool::VeePunch>(*this) || is<tool::OffsetPunch>(*this) || is<tool::ChannelPunch>(*this) ||
           is<FlatPunch>(*this) || is<WipingPunch>(*this) || is<OutlineTool>(*this);
}

bool Tool::is_die() const {
    return is<OutlineTool>(*this) || !(is_punch() || is_pad() || is_clamp());
}

bool Tool::is_pad() const {
    return is<Pad>(*this);
}

bool Tool::is_clamp() const {
    return is<Clamp>(*this);
}

const char* kind_word(const Tool& tool) {
    // In the order of Tool::shape.
    static constexpr std::array<const char*, 14> words = {
        "vee-punch",     "vee-die",     "open-die",   "offset-punch", "offset-die",
        "channel-punch", "channel-die", "flat-punch", "flat-die",     "wiping-punch",
        "wiping-die",    "pad",         "clamp",      "outline"};
    static_assert(words.size() == std::variant_size_v<decltype(tool.shape)>);
    return words[tool.shape.index()];
}

}  // namespace overbend::files
