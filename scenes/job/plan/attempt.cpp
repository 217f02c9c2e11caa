#include "scenes/job/plan/attempt.h"

#include <algorithm>

#include "scenes/job/plan/suited_pairs.h"

namespace overbend::job {

namespace {

void leave_out(const std::vector<files::Step>& banned, std::vector<files::Step>& possible) {
    const auto is_banned = [&](const files::Step& step) {
        return std::any_of(banned.begin(), banned.end(), [&](const files::Step& b) {
            return b.bends == step.bends && b.set_up() == step.set_up();
        });
    };
    possible.erase(std::remove_if(possible.begin(), possible.end(), is_banned), possible.end());
}

}  // namespace

std::unique_ptr<Attempt> search_with(const files::Case& c, const SearchOptions& options) {
    auto attempt = std::make_unique<Attempt>();
    attempt->c = c;
    attempt->blank = planning_blank(c);
    attempt->choices = choices_of(attempt->c, attempt->blank);
    leave_out(options.banned, attempt->choices.possible);
    if (options.trials)
        attempt->choices.possible =
            suited_pairs(attempt->c, attempt->choices.possible, options.any_for, *options.trials);
    attempt->ways = std::make_unique<Ways>(attempt->c, attempt->blank, attempt->choices.possible,
                                           options.margin, options.lies_deep);
    // a bend that no tools make needs no search to say so
    if (attempt->choices.unserved.empty())
        attempt->search = plan::best_orders(attempt->ways->problem(), options.orders);
    return attempt;
}

std::vector<files::Step> Attempt::steps_of(const plan::Order& order) const {
    std::vector<files::Step> steps;
    for (const plan::OrderStroke& s : order.strokes) steps.push_back(ways->step(s.way));
    return steps;
}

const Precedences& Attempt::known() {
    if (!known_) known_ = std::make_unique<Precedences>(precedences(c, *ways));
    return *known_;
}

std::vector<Rejected> Attempt::rejected() {
    std::vector<Rejected> all = choices.rejected;
    for (const Precedence& p : known().pairs)
        all.push_back(
            {"'" + c.part.bends[p.first].name + "' after '" + c.part.bends[p.then].name + "'", p.why});
    return all;
}

std::vector<std::string> why_not(Attempt& attempt) {
    std::vector<std::string> sentences;
    for (const int b : attempt.choices.unserved) {
        std::string why = "no tool in the case makes bend '" + attempt.c.part.bends[b].name + "'";
        std::vector<Rejected> of_bend;
        for (const Rejected& r : attempt.choices.rejected)
            if (r.what.find("'" + attempt.c.part.bends[b].name + "'", r.what.find(" for ")) !=
                std::string::npos)
                of_bend.push_back(r);
        for (const Rejected& r : grouped(of_bend)) why += "; " + r.what + ": " + r.why;
        sentences.push_back(why);
    }
    if (!sentences.empty()) return sentences;
    return why_no_order(attempt.c, *attempt.ways, attempt.known(), attempt.search.furthest);
}

}  // namespace overbend::job
