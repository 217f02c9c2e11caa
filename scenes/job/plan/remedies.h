// Tools that would help where no order was found, one kind of help after the other.

#pragma once

#include <string>
#include <vector>

#include "scenes/job/plan/attempt.h"
#include "scenes/job/plan/vee_trials.h"

namespace overbend::job {

// Kinds of help. grooves: grooves and punches for bends that nothing makes; room: tools that get out of the
// way where the search ended; blocked_pairs: tools that make two neighbours in one stroke which block one
// another; all_pairs: for all neighbours that can have them.
enum class Help { grooves, room, blocked_pairs, all_pairs };

struct Remedy {
    std::vector<files::Tool> tools;    // with names that no tool of the case has
    std::vector<std::string> reasons;  // "'block 12': ..." one a tool
    std::vector<std::string> cannot;   // what no tool helps
};

Remedy remedy_for(Attempt& attempt, Help help, VeeTrials& trials);

}  // namespace overbend::job
