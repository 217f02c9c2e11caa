// One search for an order, with the tools that a case has.

#pragma once

#include <memory>
#include <string>
#include <vector>

#include "scenes/job/plan/fitting_pairs.h"
#include "scenes/job/plan/precedence.h"
#include "scenes/job/plan/ways.h"

namespace overbend::job {

struct Attempt {
    files::Case c;
    Blank blank;
    Choices choices;
    std::unique_ptr<Ways> ways;  // looks at c: an attempt stays where it is
    plan::OrderSearch search;

    std::vector<files::Step> steps_of(const plan::Order& order) const;
    const Precedences& known();  // worked out when first asked for
    std::vector<Rejected> rejected();

  private:
    std::unique_ptr<Precedences> known_;
};

std::unique_ptr<Attempt> search_with(const files::Case& c, int orders, double margin);

// Why no order was found, in sentences.
std::vector<std::string> why_not(Attempt& attempt);

}  // namespace overbend::job
