// Which bends shut out which: the reasons behind an order, or behind there being none.

#pragma once

#include <string>
#include <vector>

#include "scenes/job/plan/ways.h"

namespace overbend::job {

// Bend `first` has to be made before bend `then`: once `then` is made no way of making `first` is left,
// whatever else is made. (That it has none after `then` alone says nothing: a third bend may take the flange
// out of the way.)
struct Precedence {
    int first = 0, then = 0;
    std::string why;  // after `then` alone
};

struct Precedences {
    std::vector<Precedence> pairs;
    std::vector<int> never;              // bends that no way makes, whatever else is made
    std::vector<std::string> never_why;  // on the flat strip
};

Precedences precedences(const files::Case& c, Ways& ways);

// Why there is no order, in sentences: bends that cannot be made at all, bends that shut one another out, or
// else what stops the furthest that can be made.
std::vector<std::string> why_no_order(const files::Case& c, Ways& ways, const Precedences& known,
                                      const std::vector<plan::BendSet>& furthest);

}  // namespace overbend::job
