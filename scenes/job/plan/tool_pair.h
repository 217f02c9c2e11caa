// The tools of one stroke, by their places in a case's list.

#pragma once

#include <optional>
#include <tuple>

namespace overbend::job {

struct ToolPair {
    int punch = -1, die = -1, die_face = 1;
    std::optional<int> pad, clamp;
    bool operator<(const ToolPair& o) const {
        return std::tie(punch, die, die_face, pad, clamp) <
               std::tie(o.punch, o.die, o.die_face, o.pad, o.clamp);
    }
};

}  // namespace overbend::job
