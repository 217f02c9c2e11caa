#include "scenes/files/case/kinds.h"

namespace overbend::files {

const std::vector<Kind>& all_kinds() {
    static const std::vector<Kind> kinds = {vee_punch(),  vee_die(),       open_die(),     offset_punch(),
                                            offset_die(), channel_punch(), channel_die(),  flat_punch(),
                                            flat_die(),   wiping_punch(),  wiping_die(),   pad(),
                                            clamp(),      outline_tool(),  radius_punch(), radius_die()};
    return kinds;
}

const Kind& kind_of(const ToolShape& shape) {
    return all_kinds()[shape.index()];
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
