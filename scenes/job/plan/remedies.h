// Tools that would help where no order was found, one kind of help after the other.

#pragma once

#include <string>
#include <vector>

#include "scenes/job/plan/attempt.h"

namespace overbend::job {

// 0: grooves and punches for bends that nothing makes; 1: pairs that make neighbours in one stroke which
// block one another; 2: relieved punches for what is still blocked; 3: pairs for all neighbours that can have
// one.
constexpr int remedy_stages = 4;

struct Remedy {
    std::vector<files::Tool> tools;    // with names that no tool of the case has
    std::vector<std::string> reasons;  // "'block 12': ..." one a tool
    std::vector<std::string> cannot;   // what no tool helps
};

Remedy remedy_for(Attempt& attempt, int stage);

}  // namespace overbend::job
