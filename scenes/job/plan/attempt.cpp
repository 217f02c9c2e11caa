#include "scenes/job/plan/attempt.h"

namespace overbend::job {

std::unique_ptr<Attempt> search_with(const files::Case& c, int orders, double margin) {
    auto attempt = std::make_unique<Attempt>();
    attempt->c = c;
    attempt->blank = planning_blank(c);
    attempt->choices = choices_of(attempt->c, attempt->blank);
    attempt->ways = std::make_unique<Ways>(attempt->c, attempt->blank, attempt->choices.possible, margin);
    // a bend that no tools make needs no search to say so
    if (attempt->choices.unserved.empty())
        attempt->search = plan::best_orders(attempt->ways->problem(), orders);
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
