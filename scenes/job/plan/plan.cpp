#include "scenes/job/plan/plan.h"

#include <algorithm>
#include <cmath>
#include <future>
#include <set>

#include "scenes/job/plan/attempt.h"
#include "scenes/job/plan/remedies.h"
#include "scenes/job/shop/shop.h"
#include "sim/errors.h"

namespace overbend::job {

namespace {

// What reading a case for a plan refuses, with its line.
void check(const files::Case& c) {
    if (static_cast<int>(c.part.bends.size()) > plan::most_bends_to_order)
        throw OutOfRange("bends", std::to_string(c.part.bends.size()) + " cannot be put in order",
                         "give at most " + std::to_string(plan::most_bends_to_order));
    for (const files::Bend& b : c.part.bends)
        if (std::abs(b.angle) > plan::sharpest_to_order)
            throw OutOfRange("bend angle", "'" + b.name + "' is a hem; hems cannot be planned",
                             "give less than 170 deg");
}

void rank(const Attempt& attempt, PlanResult& result) {
    for (const plan::Order& order : attempt.search.best)
        result.ranked.push_back({order, attempt.steps_of(order), OrderVerdict::not_run, ""});
}

// ---- the best few through the mechanics

files::Case with_steps(const files::Case& c, const std::vector<files::Step>& steps) {
    files::Case whole = c;
    whole.steps = steps;
    return whole;
}

// Problems of an order: all that the judge finds, but for the sizes of the part, which are fitted.
void judge(const files::Case& c, const JobResult& job, RankedOrder& order) {
    const auto speaks_against = [](const Finding& f) {
        return f.severity == Severity::stops && facts_of(f.rule).group != RuleGroup::part;
    };
    Findings against = those(job.findings, speaks_against);
    for (const Finding& f : those(shop_report(c, job).findings, speaks_against)) add(against, f);
    order.verdict = job.solved && against.empty() ? OrderVerdict::works : OrderVerdict::refused;
    if (!against.empty()) order.words = why_not(c, against);
}

// The cheapest is fitted to the drawing while the next ones are run once beside it.
void run_through(const files::Case& c, const FitOptions& fit_options, int count, PlanResult& result) {
    count = std::min(count, static_cast<int>(result.ranked.size()));
    auto beside = std::async(std::launch::async, [&] {
        for (int i = 1; i < count; ++i) {
            const files::Case tried = with_steps(c, result.ranked[i].steps);
            judge(tried, run_process(tried, {}), result.ranked[i]);
        }
    });
    Fit fit = fit_to_drawing(with_steps(c, result.ranked.front().steps), fit_options);
    judge(fit.c, fit.job, result.ranked.front());
    beside.get();
    for (int i = 0; i < static_cast<int>(result.ranked.size()); ++i) {
        RankedOrder& order = result.ranked[i];
        if (order.verdict == OrderVerdict::refused) continue;
        if (i > 0) {
            fit = fit_to_drawing(with_steps(c, order.steps), fit_options);
            judge(fit.c, fit.job, order);
        }
        if (order.verdict != OrderVerdict::works) continue;
        result.chosen = i;
        result.found = true;
        result.fit = std::move(fit);
        return;
    }
}

std::set<int> tools_of_steps(const std::vector<files::Step>& steps) {
    std::set<int> used;
    for (const files::Step& s : steps)
        for (const int tool : s.tools()) used.insert(tool);
    return used;
}

// Of the remarks on proposed tools, those on tools that these steps use.
std::vector<std::string> used_of(const std::vector<files::Step>& steps, int given_tools,
                                 const std::vector<std::string>& proposed) {
    std::vector<std::string> told;
    for (const int tool : tools_of_steps(steps))
        if (tool >= given_tools) told.push_back(proposed[tool - given_tools]);
    return told;
}

// Adds one kind of tools after the other until there is an order; returns what no tool helps.
std::vector<std::string> add_tools(files::Case& c, const PlanOptions& options,
                                   std::unique_ptr<Attempt>& attempt, PlanResult& result) {
    std::vector<std::string> cannot;
    for (int stage = 0; attempt->search.best.empty() && stage < remedy_stages; ++stage) {
        const Remedy remedy = remedy_for(*attempt, stage);
        cannot.insert(cannot.end(), remedy.cannot.begin(), remedy.cannot.end());
        if (remedy.tools.empty()) continue;
        result.proposed.insert(result.proposed.end(), remedy.reasons.begin(), remedy.reasons.end());
        c.tools.insert(c.tools.end(), remedy.tools.begin(), remedy.tools.end());
        attempt = search_with(c, options.orders, options.margin);
        result.sets = attempt->search.sets, result.asked += attempt->search.asked;
    }
    return cannot;
}

// Proposed tools that no step uses are left out of the finished case and of the remarks; those
// that were there stay. proposed: in words, one for each tool beyond the given ones.
void leave_out_unused(files::Case& c, int given_tools, std::vector<std::string>& proposed) {
    const std::set<int> used = tools_of_steps(c.steps);
    proposed = used_of(c.steps, given_tools, proposed);
    std::vector<int> place(c.tools.size(), -1);
    std::vector<files::Tool> kept;
    for (int i = 0; i < static_cast<int>(c.tools.size()); ++i) {
        if (i >= given_tools && used.count(i) == 0) continue;
        place[i] = static_cast<int>(kept.size());
        kept.push_back(c.tools[i]);
    }
    c.tools = kept;
    for (files::Step& s : c.steps) {
        s.punch = place[s.punch], s.die = place[s.die];
        if (s.pad) s.pad = place[*s.pad];
        if (s.clamp) s.clamp = place[*s.clamp];
    }
}

// Names of steps that come twice get a number.
void name_steps(files::Case& c) {
    std::set<std::string> taken;
    for (files::Step& s : c.steps) {
        const std::string name = s.name;
        for (int i = 2; !taken.insert(s.name).second; ++i) s.name = name + " " + std::to_string(i);
    }
}

}  // namespace

const char* verdict_word(OrderVerdict verdict) {
    if (verdict == OrderVerdict::not_run) return "not run";
    return verdict == OrderVerdict::works ? "works" : "refused";
}

PlanResult plan_case(const files::Case& given, const PlanOptions& options) {
    check(given);
    const auto say = [&](const std::string& what) {
        if (options.progress) options.progress(what);
    };
    PlanResult result;
    files::Case c = given;
    c.steps.clear();
    const int given_tools = static_cast<int>(c.tools.size());

    say("searching for an order with the tools of the case");
    std::unique_ptr<Attempt> attempt = search_with(c, options.orders, options.margin);
    result.sets = attempt->search.sets, result.asked = attempt->search.asked;
    const bool own_do = !attempt->search.best.empty();
    if (!own_do) {
        if (options.rack_only) result.rejected = attempt->rejected(), result.reasons = why_not(*attempt);
        say("searching for an order with more tools");
        const std::vector<std::string> cannot = add_tools(c, options, attempt, result);
        const bool helped = !attempt->search.best.empty();
        if (options.rack_only) {
            if (helped)
                result.would_help =
                    used_of(attempt->steps_of(attempt->search.best.front()), given_tools, result.proposed);
            result.proposed.clear();
            return result;
        }
        if (!helped) {
            result.rejected = attempt->rejected(), result.reasons = why_not(*attempt);
            result.reasons.insert(result.reasons.end(), cannot.begin(), cannot.end());
            result.planned = c;
            return result;
        }
    }
    result.rejected = attempt->rejected();
    result.planned = c;
    rank(*attempt, result);
    say("simulating the best orders");
    FitOptions fit = options.fit;
    for (int i = given_tools; i < static_cast<int>(c.tools.size()); ++i) fit.own_tools.push_back(i);
    run_through(c, fit, options.run_through, result);
    if (!result.found) {
        for (const RankedOrder& order : result.ranked) result.reasons.push_back(order.words);
        return result;
    }
    result.planned = result.fit.c;
    name_steps(result.planned);
    leave_out_unused(result.planned, given_tools, result.proposed);
    // What `check` of the planned case finds.
    result.fit.job.spread = angle_spread(result.planned, result.fit.job);
    look_at_shop(result.planned, result.fit.job);
    return result;
}

}  // namespace overbend::job
