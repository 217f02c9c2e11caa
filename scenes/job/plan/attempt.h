// One search for an order, with the tools that a case has.

#pragma once

#include <memory>
#include <string>
#include <vector>

#include "scenes/job/plan/fitting_pairs.h"
#include "scenes/job/plan/precedence.h"
#include "scenes/job/plan/vee_trials.h"
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

struct SearchOptions {
    int orders = 1;                      // that are ranked
    double margin = 0.0;                 // mm, kept between the strip and what it does not lie on
    double lies_deep = usual_lies_deep;  // see plan::RoomOptions
    VeeTrials* trials =
        nullptr;  // for pairs of V tools that suit a bend, see suited_pairs.h; else all are looked at
    plan::BendSet any_for = 0;  // bends that are made by whatever makes them, however badly
    std::vector<files::Step> banned =
        {};  // strokes that the mechanics turned down: their bends with their tools
};
std::unique_ptr<Attempt> search_with(const files::Case& c, const SearchOptions& options);

// Why no order was found, in sentences.
std::vector<std::string> why_not(Attempt& attempt);

}  // namespace overbend::job
