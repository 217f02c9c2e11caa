#include "scenes/job/plan/precedence.h"

#include <algorithm>

#include "scenes/files/case/nearest_key.h"

namespace overbend::job {

namespace {

std::string quoted(const files::Case& c, int b) {
    return "'" + c.part.bends[b].name + "'";
}

std::string bends_in(const files::Case& c, plan::BendSet set) {
    std::vector<std::string> names;
    for (int b = 0; b < static_cast<int>(c.part.bends.size()); ++b)
        if (set & bit(b)) names.push_back(quoted(c, b));
    return files::listed(names, " and ");
}

// Reasons that differ in nothing but figures are one.
std::string without_figures(std::string reason) {
    const auto is_figure = [](char c) { return (c >= '0' && c <= '9') || c == '.'; };
    reason.erase(std::remove_if(reason.begin(), reason.end(), is_figure), reason.end());
    return reason;
}

// Whether any way makes this bend with these made; if not, the reasons of each.
struct Makable {
    bool yes = false;
    std::vector<std::string> reasons;  // each kind once, with the figures of the first way
};
Makable makable(Ways& ways, int bend, plan::BendSet made) {
    Makable found;
    for (int w = 0; w < ways.count(); ++w) {
        const plan::BendSet bends = ways.way(w).bends;
        if (!(bends & bit(bend)) || (bends & made)) continue;
        const std::string why = ways.reason(w, made);
        if (why.empty()) return {true, {}};
        const auto is_alike = [&](const std::string& r) {
            return without_figures(r) == without_figures(why);
        };
        if (std::none_of(found.reasons.begin(), found.reasons.end(), is_alike)) found.reasons.push_back(why);
    }
    return found;
}

// Whether a way goes after any set with these made.
bool ever_possible(Ways& ways, int way, plan::BendSet made, int bends) {
    const plan::BendSet others = (bit(bends) - 1) & ~ways.way(way).bends & ~made;
    for (plan::BendSet more = others;; more = (more - 1) & others) {  // all subsets
        if (ways.is_possible(way, made | more)) return true;
        if (more == 0) return false;
    }
}

// Whether any way makes this bend after any set with these made.
bool ever_makable(Ways& ways, int bend, plan::BendSet made, int bends) {
    for (int w = 0; w < ways.count(); ++w) {
        const plan::BendSet own = ways.way(w).bends;
        if ((own & bit(bend)) && !(own & made) && ever_possible(ways, w, made, bends)) return true;
    }
    return false;
}

std::string joined(const std::vector<std::string>& reasons) {
    constexpr std::size_t most = 3;
    std::string all;
    for (std::size_t i = 0; i < reasons.size() && i < most; ++i) all += (i ? "; or " : "") + reasons[i];
    return reasons.empty() ? "no tool in the case makes it" : all;
}

// Whether one stroke makes both, after some set.
bool go_together(Ways& ways, int a, int b, int bends) {
    for (int w = 0; w < ways.count(); ++w) {
        const plan::BendSet own = ways.way(w).bends;
        if (own == (bit(a) | bit(b)) && ever_possible(ways, w, 0, bends)) return true;
    }
    return false;
}

bool is_known(const Precedences& known, int first, int then) {
    return std::any_of(known.pairs.begin(), known.pairs.end(),
                       [&](const Precedence& p) { return p.first == first && p.then == then; });
}

}  // namespace

Precedences precedences(const files::Case& c, Ways& ways) {
    const int bends = static_cast<int>(c.part.bends.size());
    Precedences known;
    for (int b = 0; b < bends; ++b) {
        if (!ever_makable(ways, b, 0, bends)) {
            known.never.push_back(b);
            known.never_why.push_back(joined(makable(ways, b, 0).reasons));
            continue;
        }
        for (int other = 0; other < bends; ++other) {
            if (other == b || ever_makable(ways, b, bit(other), bends)) continue;
            const Makable after = makable(ways, b, bit(other));
            if (!after.reasons.empty()) known.pairs.push_back({b, other, joined(after.reasons)});
        }
    }
    return known;
}

std::vector<std::string> why_no_order(const files::Case& c, Ways& ways, const Precedences& known,
                                      const std::vector<plan::BendSet>& furthest) {
    std::vector<std::string> sentences;
    for (std::size_t i = 0; i < known.never.size(); ++i)
        sentences.push_back("bend " + quoted(c, known.never[i]) +
                            " cannot be made in any order; on the flat strip: " + known.never_why[i]);
    for (const Precedence& p : known.pairs)
        if (p.first < p.then && is_known(known, p.then, p.first) &&
            !go_together(ways, p.first, p.then, static_cast<int>(c.part.bends.size())))
            sentences.push_back("bends " + quoted(c, p.first) + " and " + quoted(c, p.then) +
                                " block each other: neither can follow the other (" + p.why + ")");
    if (!sentences.empty()) return sentences;
    const plan::BendSet all = bit(static_cast<int>(c.part.bends.size())) - 1;
    constexpr std::size_t most = 3;
    for (std::size_t i = 0; i < furthest.size() && i < most; ++i) {
        std::string sentence = furthest[i] == 0 ? std::string("no bend can be made")
                                                : "after " + bends_in(c, furthest[i]) + " no bend can follow";
        for (int b = 0; b < static_cast<int>(c.part.bends.size()); ++b)
            if (all & ~furthest[i] & bit(b))
                sentence += "; " + quoted(c, b) + ": " + joined(makable(ways, b, furthest[i]).reasons);
        sentences.push_back(sentence);
    }
    return sentences;
}

}  // namespace overbend::job
