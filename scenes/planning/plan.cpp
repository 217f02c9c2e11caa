#include "scenes/planning/plan.h"

#include <algorithm>
#include <cmath>
#include <future>
#include <memory>
#include <set>

#include "scenes/planning/choices.h"
#include "scenes/planning/precedence.h"
#include "scenes/planning/ways.h"
#include "sim/errors.h"

namespace overbend::scenes {

namespace {

constexpr double hem_angle = 170.0 * 3.14159265358979323846 / 180.0;

void check(const Case& c) {
    const int bends = static_cast<int>(c.part.bends.size());
    if (bends > plan::most_bends_to_order)
        throw OutOfRange(
            "part.path", std::to_string(bends) + " bends are too many to find their order",
            "give at most " + std::to_string(plan::most_bends_to_order) + ", or write the steps");
    for (const Bend& b : c.part.bends)
        if (std::abs(b.angle) > hem_angle)
            throw OutOfRange("part.path", "'" + b.name + "' is a hem, and hems are not planned",
                             "write the steps for this part");
}

// ---- the search with one set of tools

struct Attempt {
    Case c;  // with its tools
    Choices choices;
    std::unique_ptr<Ways> ways;
    plan::OrderSearch search;
};

std::unique_ptr<Attempt> search_with(const Case& c, const PlanOptions& options) {
    auto attempt = std::make_unique<Attempt>();
    attempt->c = c;
    attempt->choices = choices_of(attempt->c);
    attempt->ways =
        std::make_unique<Ways>(attempt->c, make_blank(attempt->c), attempt->choices.possible, options.margin);
    if (attempt->ways->count() > 0)
        attempt->search =
            plan::best_orders(attempt->ways->problem(), std::max(options.orders, options.run_through));
    return attempt;
}

std::vector<Step> steps_of(const Ways& ways, const plan::Order& order) {
    std::vector<Step> steps;
    for (const plan::OrderStroke& s : order.strokes) steps.push_back(ways.step(s.way));
    return steps;
}

void rank(const Attempt& attempt, PlanResult& result) {
    for (const plan::Order& order : attempt.search.best)
        result.ranked.push_back({order, steps_of(*attempt.ways, order), OrderVerdict::not_run, ""});
    result.sets += attempt.search.sets;
    result.asked += attempt.search.asked;
}

// ---- the best few through the mechanics

Case with_steps(const Case& c, const std::vector<Step>& steps) {
    Case whole = c;
    whole.steps = steps;
    return whole;
}

void judge(const JobResult& job, RankedOrder& order) {
    order.verdict = job.solved && job.findings.empty() ? OrderVerdict::works : OrderVerdict::refused;
    if (!job.findings.empty()) order.words = job.findings.front();
}

// The cheapest is fitted to the drawing while the next ones are run once beside it.
void run_through(const Case& c, const PlanOptions& options, PlanResult& result) {
    const int count = std::min<int>(options.run_through, static_cast<int>(result.ranked.size()));
    auto beside = std::async(std::launch::async, [&] {
        for (int i = 1; i < count; ++i) {
            ProcessOptions how;
            judge(run_process(with_steps(c, result.ranked[i].steps), how), result.ranked[i]);
        }
    });
    Fit first = fit_to_drawing(with_steps(c, result.ranked.front().steps), options.fit);
    judge(first.job, result.ranked.front());
    beside.get();
    for (int i = 0; i < static_cast<int>(result.ranked.size()) && result.chosen < 0; ++i) {
        RankedOrder& order = result.ranked[i];
        if (order.verdict == OrderVerdict::refused) continue;
        if (i > 0) {
            first = fit_to_drawing(with_steps(c, order.steps), options.fit);
            judge(first.job, order);
        }
        if (order.verdict == OrderVerdict::works) result.chosen = i;
    }
    if (result.chosen < 0) return;
    result.found = true;
    result.fit = std::move(first);
}

void reject(const Attempt& attempt, const Precedences& known, PlanResult& result) {
    result.rejected = attempt.choices.rejected;
    const std::vector<Bend>& bends = attempt.c.part.bends;
    for (const Precedence& p : known.pairs)
        result.rejected.push_back(
            {"'" + bends[p.first].name + "' after '" + bends[p.then].name + "'", p.why});
}

// Tools that no step uses are left out of what was proposed; those of the rack stay.
void leave_out_unused(Case& c, const std::vector<int>& own_tools) {
    std::set<int> used;
    for (const Step& s : c.steps) {
        used.insert({s.punch, s.die});
        if (s.pad) used.insert(*s.pad);
        if (s.clamp) used.insert(*s.clamp);
    }
    std::vector<int> place(c.tools.size(), -1);
    std::vector<Tool> kept;
    for (int i = 0; i < static_cast<int>(c.tools.size()); ++i) {
        if (std::count(own_tools.begin(), own_tools.end(), i) > 0 && used.count(i) == 0) continue;
        place[i] = static_cast<int>(kept.size());
        kept.push_back(c.tools[i]);
    }
    c.tools = kept;
    for (Step& s : c.steps) {
        s.punch = place[s.punch], s.die = place[s.die];
        if (s.pad) s.pad = place[*s.pad];
        if (s.clamp) s.clamp = place[*s.clamp];
    }
}

}  // namespace

PlanResult plan_case(const Case& given, const PlanOptions& options) {
    check(given);
    const auto say = [&](const std::string& what) {
        if (options.progress) options.progress(what);
    };
    PlanResult result;
    result.planned = given;
    Case c = given;
    c.steps.clear();

    say("searching with the tools that are there");
    std::unique_ptr<Attempt> attempt = search_with(c, options);
    std::vector<int> own_tools;
    std::unique_ptr<Attempt> as_given;
    if (attempt->search.best.empty() && !options.rack_only) {
        as_given = std::move(attempt);
        for (int round = 0; round < proposal_rounds; ++round) {
            say("proposing tools");
            const Proposal proposal = propose_for(c, *as_given, round);
            attempt = search_with(proposal.c, options);
        }
    }
    return result;
}

}  // namespace overbend::scenes
