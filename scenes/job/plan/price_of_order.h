// What an order costs as far as orders differ: the tools that are made for it, and the time of a batch.
//
// Units  the case's money.

#pragma once

#include "scenes/job/plan/attempt.h"

namespace overbend::job {

// given_tools: how many of the case's first tools are there already. With the case's rates, or the usual
// ones.
double price_of_order(const Attempt& attempt, const plan::Order& order, int given_tools);

}  // namespace overbend::job
