#include "scenes/files/case/kinds.h"

namespace overbend::files {

namespace {

template <class... T>
std::vector<Kind> kinds_in(const std::variant<T...>*) {
    return {kind_of(fresh<T>())...};
}

}  // namespace

Kind kind_of(const ToolShape& shape) {
    return std::visit([](const auto& held) { return kind_of(held); }, shape);
}

const std::vector<Kind>& all_kinds() {
    static const std::vector<Kind> kinds = kinds_in(static_cast<const ToolShape*>(nullptr));
    return kinds;
}

const Words& kind_list() {
    static const Words words = [] {
        Words all;
        for (const Kind& kind : all_kinds()) all.emplace_back(kind.word);
        return all;
    }();
    return words;
}

}  // namespace overbend::files
