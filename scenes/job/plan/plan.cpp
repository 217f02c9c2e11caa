#include "scenes/job/plan/plan.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "scenes/job/plan/attempt.h"
#include "scenes/job/plan/price_of_order.h"
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
        result.ranked.push_back({order, attempt.steps_of(order), OrderVerdict::not_run, "", {}});
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
    order.against = those(job.findings, speaks_against);
    for (const Finding& f : those(shop_report(c, job).findings, speaks_against)) add(order.against, f);
    order.verdict = job.solved && order.against.empty() ? OrderVerdict::works : OrderVerdict::refused;
    order.words = why_not(c, order.against);
}

bool has_like(const std::vector<files::Step>& steps, const files::Step& stroke) {
    return std::any_of(steps.begin(), steps.end(), [&](const files::Step& s) {
        return s.bends == stroke.bends && s.set_up() == stroke.set_up();
    });
}

// The stroke that an order was turned down for, where there is one.
std::optional<files::Step> culprit(const RankedOrder& order) {
    for (const Finding& f : order.against)
        if (f.rule != Rule::interference && f.place.of == On::step) return order.steps[f.place.step];
    return {};
}

// The cheapest that works is fitted to the drawing. An order with a stroke that another was turned down for
// is not tried.
void run_through(const files::Case& c, const FitOptions& fit_options, PlanResult& result) {
    std::vector<files::Step> culprits;
    for (int i = 0; i < static_cast<int>(result.ranked.size()); ++i) {
        RankedOrder& order = result.ranked[i];
        const bool known = std::any_of(culprits.begin(), culprits.end(),
                                       [&](const files::Step& s) { return has_like(order.steps, s); });
        if (known) continue;
        const files::Case tried = with_steps(c, order.steps);
        const JobResult first = run_process(tried, {});
        judge(tried, first, order);
        if (order.verdict != OrderVerdict::works) {
            if (const std::optional<files::Step> stroke = culprit(order)) culprits.push_back(*stroke);
            continue;
        }
        Fit fit = fit_to_drawing(tried, fit_options, first);
        judge(fit.c, fit.job, order);
        if (order.verdict != OrderVerdict::works) continue;
        result.chosen = i;
        result.found = true;
        result.fit = std::move(fit);
        return;
    }
}

// What the mechanics turned down goes back into the search: more room where the strip was hit, other tools
// for a stroke that was not solved or asked too much. Returns whether there was anything.
bool learn(const std::vector<RankedOrder>& ranked, double thickness, SearchOptions& options) {
    constexpr double spare = 0.05;  // thicknesses, over what was missing
    const SearchOptions before = options;
    for (const RankedOrder& order : ranked)
        for (const Finding& f : order.against) {
            if (f.rule == Rule::interference) {
                const bool with_ram = f.detail.rfind("punch", 0) == 0 || f.detail.rfind("ram", 0) == 0;
                if (with_ram)
                    options.margin = std::max(options.margin, before.margin + f.figure + spare * thickness);
                else
                    options.lies_deep =
                        std::min(options.lies_deep, before.lies_deep - f.figure / thickness - spare);
                continue;
            }
            for (std::size_t i = 0; i < order.steps.size(); ++i) {
                const std::vector<int> tools = order.steps[i].tools();
                const bool its = f.place.of == On::tool
                                     ? std::count(tools.begin(), tools.end(), f.place.tool) > 0
                                     : f.place.step == static_cast<int>(i);
                if (its) options.banned.push_back(order.steps[i]);
            }
        }
    return options.margin > before.margin || options.lies_deep < before.lies_deep ||
           options.banned.size() > before.banned.size();
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

// Adds one kind of tools after the other until there is an order.
class Toolmaker {
  public:
    Toolmaker(files::Case& c, int given_tools, SearchOptions options, std::unique_ptr<Attempt>& attempt,
              PlanResult& result)
        : c_(c),
          given_tools_(given_tools),
          options_(std::move(options)),
          attempt_(attempt),
          result_(result) {}

    // Returns what no tool helps.
    std::vector<std::string> run() {
        VeeTrials& trials = *options_.trials;
        for (const Help help : {Help::grooves, Help::blocked_pairs, Help::all_pairs}) {
            add(help, trials);
            make_room(trials);
        }
        if (!attempt_->search.best.empty()) pairs_if_cheaper();
        // Tools that make the radius of a bend that is left badly, rather than none.
        if (attempt_->search.best.empty() && attempt_->choices.unserved.empty()) {
            const plan::BendSet all = bit(static_cast<int>(c_.part.bends.size())) - 1;
            for (const plan::BendSet made : attempt_->search.furthest) options_.any_for |= all & ~made;
            search();
            make_room(trials);
        }
        return cannot_;
    }

  private:
    void pairs_if_cheaper() {
        const Remedy remedy = remedy_for(*attempt_, Help::all_pairs, *options_.trials);
        if (remedy.tools.empty()) return;
        files::Case with = c_;
        with.tools.insert(with.tools.end(), remedy.tools.begin(), remedy.tools.end());
        std::unique_ptr<Attempt> other = search_with(with, options_);
        const auto price = [&](const Attempt& a) {
            return price_of_order(a, a.search.best.front(), given_tools_);
        };
        if (price(*other) >= price(*attempt_)) return;
        c_ = with;
        result_.proposed.insert(result_.proposed.end(), remedy.reasons.begin(), remedy.reasons.end());
        attempt_ = std::move(other);
    }

    // What is in the way of one bend comes to light when that of another is gone.
    void make_room(VeeTrials& trials) {
        constexpr int most_rounds = 6;
        for (int round = 0; round < most_rounds && add(Help::room, trials); ++round) {
        }
    }

    bool add(Help help, VeeTrials& trials) {
        if (!attempt_->search.best.empty()) return false;
        const Remedy remedy = remedy_for(*attempt_, help, trials);
        for (const std::string& why : remedy.cannot)
            if (std::count(cannot_.begin(), cannot_.end(), why) == 0) cannot_.push_back(why);
        if (remedy.tools.empty()) return false;
        result_.proposed.insert(result_.proposed.end(), remedy.reasons.begin(), remedy.reasons.end());
        c_.tools.insert(c_.tools.end(), remedy.tools.begin(), remedy.tools.end());
        search();
        return true;
    }

    void search() {
        attempt_ = search_with(c_, options_);
        result_.sets = attempt_->search.sets, result_.asked += attempt_->search.asked;
    }

    files::Case& c_;
    int given_tools_;
    SearchOptions options_;
    std::unique_ptr<Attempt>& attempt_;
    PlanResult& result_;
    std::vector<std::string> cannot_;
};

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

    VeeTrials trials(given);
    SearchOptions search;
    search.orders = options.orders, search.margin = options.margin, search.trials = &trials;
    constexpr int most_rounds = 3;
    for (int round = 0; !result.found && round < most_rounds; ++round) {
        say("searching for an order with the tools of the case");
        std::unique_ptr<Attempt> attempt = search_with(c, search);
        result.sets = attempt->search.sets, result.asked += attempt->search.asked;
        if (attempt->search.best.empty()) {
            std::vector<Rejected> rejected;
            std::vector<std::string> reasons;
            if (options.rack_only) rejected = attempt->rejected(), reasons = why_not(*attempt);
            say("searching for an order with more tools");
            const std::vector<std::string> cannot = Toolmaker(c, given_tools, search, attempt, result).run();
            const bool helped = !attempt->search.best.empty();
            if (options.rack_only) {
                if (helped)
                    result.would_help = used_of(attempt->steps_of(attempt->search.best.front()), given_tools,
                                                result.proposed);
                result.proposed.clear();
                result.rejected = std::move(rejected), result.reasons = std::move(reasons);
                return result;
            }
            if (!helped) {
                if (round > 0) break;  // the mechanics has turned down what there was
                result.rejected = attempt->rejected(), result.reasons = why_not(*attempt);
                result.reasons.insert(result.reasons.end(), cannot.begin(), cannot.end());
                result.planned = c;
                return result;
            }
        }
        result.rejected = attempt->rejected();
        result.planned = c;
        result.ranked.clear();
        rank(*attempt, result);
        say("simulating the best orders");
        FitOptions fit = options.fit;
        fit.own_tools.clear();
        for (int i = given_tools; i < static_cast<int>(c.tools.size()); ++i) fit.own_tools.push_back(i);
        run_through(c, fit, result);
        if (!result.found && !learn(result.ranked, c.thickness, search)) break;
    }
    if (!result.found) {
        for (const RankedOrder& order : result.ranked)
            if (!order.words.empty() &&
                std::count(result.reasons.begin(), result.reasons.end(), order.words) == 0)
                result.reasons.push_back(order.words);
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
