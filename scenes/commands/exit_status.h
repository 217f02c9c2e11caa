// What a command's exit status says.

#pragma once

namespace overbend::commands {

enum class Exit {
    done = 0,          // done, and feasible where there is a verdict
    verdict_no = 1,    // done, and the verdict is no
    bad_input = 2,     // bad input or usage
    not_computed = 3,  // could not be computed
};

}  // namespace overbend::commands
