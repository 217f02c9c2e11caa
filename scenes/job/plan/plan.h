// From the drawing to a job that makes it: tools, order, blank, stops, and what was turned down on the way.
//
// Units  mm, rad, s.

#pragma once

#include <functional>
#include <string>
#include <vector>

#include "scenes/files/case/case.h"
#include "scenes/job/plan/fit_to_drawing.h"
#include "scenes/job/plan/fitting_pairs.h"
#include "sim/plan/bend_order.h"

namespace overbend::job {

struct PlanOptions {
    int orders = 5;          // ranked in the table, >= 1
    double margin = 0.0;     // mm, kept by rule between the strip and what it does not lie on
    bool rack_only = false;  // no tool is proposed
    FitOptions fit;
    std::function<void(const std::string& what)> progress;
};

enum class OrderVerdict {
    not_run,  // found by rule, not run through the mechanics
    works,    // run, and nothing found against it
    refused   // run, and something was found against it
};

const char* verdict_word(OrderVerdict verdict);

struct RankedOrder {
    plan::Order order;
    std::vector<files::Step> steps;
    OrderVerdict verdict = OrderVerdict::not_run;
    std::string words;  // what was found against it, the first
    Findings against;
};

struct PlanResult {
    bool found = false;                   // an order that works in the mechanics
    files::Case planned;                  // complete: the best order that works, else the case as it was
    Fit fit;                              // of it
    std::vector<RankedOrder> ranked;      // cheapest first
    int chosen = -1;                      // of them
    std::vector<Rejected> rejected;       // tools that do not fit, bends that cannot follow others
    std::vector<std::string> proposed;    // tools that were added, with the reasons for their sizes
    std::vector<std::string> would_help;  // with rack_only: added tools with which there would be an order
    std::vector<std::string> reasons;     // why there is no plan
    int sets = 0;                         // sets of made bends that were looked at
    long asked = 0;                       // strokes looked at by rule
};

// The case's steps, if it has any, are not looked at. Throws OutOfRange: more bends than can be ordered; a
// hem, which this does not plan.
PlanResult plan_case(const files::Case& c, const PlanOptions& options);

}  // namespace overbend::job
