#include "scenes/job/plan/choices.h"

#include <algorithm>

#include "scenes/job/plan/fitting_pairs.h"

namespace overbend::job {

namespace {

std::string bend_words(const files::Case& c, const std::vector<int>& bends) {
    std::string text;
    for (const int b : bends) text += (text.empty() ? "'" : " and '") + c.part.bends[b].name + "'";
    return text;
}

void add(const files::Case& c, const Blank& blank, const std::vector<int>& bends, Choices& choices) {
    const Fitting fitting = fitting_pairs(c, blank, bends);
    choices.possible.insert(choices.possible.end(), fitting.pairs.begin(), fitting.pairs.end());
    for (const Misfit& m : fitting.misfits) {
        // one line for all bends that are turned down for the same reason
        const std::string pair = pair_words(c, m.stroke) + " for ";
        const auto same = [&](const Rejected& r) { return r.why == m.why && r.what.rfind(pair, 0) == 0; };
        const auto before = std::find_if(choices.rejected.begin(), choices.rejected.end(), same);
        if (before == choices.rejected.end())
            choices.rejected.push_back({pair + bend_words(c, bends), m.why});
        else
            before->what += ", " + bend_words(c, bends);
    }
}

}  // namespace

Choices choices_of(const files::Case& c, const Blank& blank) {
    const int bends = static_cast<int>(c.part.bends.size());
    Choices choices;
    for (int b = 0; b < bends; ++b) add(c, blank, {b}, choices);
    for (int b = 0; b + 1 < bends; ++b) add(c, blank, {b, b + 1}, choices);
    for (int b = 0; b < bends; ++b) {
        const bool served =
            std::any_of(choices.possible.begin(), choices.possible.end(), [b](const files::Step& choice) {
                return std::count(choice.bends.begin(), choice.bends.end(), b) > 0;
            });
        if (!served) choices.unserved.push_back(b);
    }
    return choices;
}

}  // namespace overbend::job
