#include "scenes/job/plan/remedies.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "scenes/job/plan/propose_pair.h"
#include "scenes/job/plan/propose_relieved.h"
#include "scenes/job/plan/propose_vee.h"
#include "sim/units.h"

namespace overbend::job {

namespace {

void add(const files::Case& c, const ProposedTools& proposed, Remedy& remedy) {
    const auto is_taken = [&](const std::string& name) {
        const auto has = [&](const files::Tool& t) { return t.name == name; };
        return std::any_of(c.tools.begin(), c.tools.end(), has) ||
               std::any_of(remedy.tools.begin(), remedy.tools.end(), has);
    };
    for (std::size_t i = 0; i < proposed.tools.size(); ++i) {
        files::Tool tool = proposed.tools[i];
        const std::string name = tool.name;
        for (int n = 2; is_taken(tool.name); ++n) tool.name = name + " (" + std::to_string(n) + ")";
        remedy.reasons.push_back("'" + tool.name + "': " + proposed.reasons[i]);
        remedy.tools.push_back(tool);
    }
    remedy.cannot.insert(remedy.cannot.end(), proposed.cannot.begin(), proposed.cannot.end());
}

enum class Together { no, offset, channel };
Together one_stroke(const files::Case& c, int left) {
    const files::Bend &a = c.part.bends[left], &b = c.part.bends[left + 1];
    if (std::abs(std::abs(a.angle) - std::abs(b.angle)) > 0.5 * degree) return Together::no;
    if ((a.angle > 0.0) != (b.angle > 0.0))
        return std::abs(a.angle) < 80.0 * degree ? Together::offset : Together::no;
    const bool square = std::abs(std::abs(a.angle) - 90.0 * degree) < 1.0 * degree;
    return square ? Together::channel : Together::no;
}

bool has_pair(const Attempt& attempt, int left) {
    return std::any_of(attempt.choices.possible.begin(), attempt.choices.possible.end(),
                       [left](const StrokeChoice& choice) {
                           return choice.bends.size() == 2 && choice.bends.front() == left;
                       });
}

bool block_one_another(Attempt& attempt, int a, int b) {
    const auto before = [&](int first, int then) {
        return std::any_of(attempt.known().pairs.begin(), attempt.known().pairs.end(),
                           [&](const Precedence& p) { return p.first == first && p.then == then; });
    };
    const std::vector<int>& never = attempt.known().never;
    const auto is_never = [&](int bend) { return std::count(never.begin(), never.end(), bend) > 0; };
    return is_never(a) || is_never(b) || (before(a, b) && before(b, a));
}

enum class Which { blocked, all };
Remedy pairs(Attempt& attempt, Which which) {
    Remedy remedy;
    const int bends = static_cast<int>(attempt.c.part.bends.size());
    for (int b = 0; b + 1 < bends; ++b) {
        const Together together = one_stroke(attempt.c, b);
        if (together == Together::no || has_pair(attempt, b)) continue;
        if (which == Which::blocked && !block_one_another(attempt, b, b + 1)) continue;
        add(attempt.c,
            together == Together::offset ? propose_offset(attempt.c, attempt.blank, b)
                                         : propose_channel(attempt.c, b),
            remedy);
    }
    return remedy;
}

// Neighbours of like sense of which the first cannot be bent once the second is made: its flange leans over
// the bend.
std::vector<std::pair<int, int>> leaning_over(Attempt& attempt) {
    std::vector<std::pair<int, int>> pairs;
    const std::vector<files::Bend>& bends = attempt.c.part.bends;
    for (const Precedence& p : attempt.known().pairs)
        if (std::abs(p.first - p.then) == 1 && (bends[p.first].angle > 0.0) == (bends[p.then].angle > 0.0))
            pairs.emplace_back(p.first, p.then);
    return pairs;
}

}  // namespace

Remedy remedy_for(Attempt& attempt, int stage) {
    Remedy remedy;
    switch (stage) {
        case 0:
            add(attempt.c, propose_vee(attempt.c, attempt.blank, attempt.choices.unserved), remedy);
            return remedy;
        case 1:
            return pairs(attempt, Which::blocked);
        case 2:
            add(attempt.c, propose_relieved(attempt.c, leaning_over(attempt)), remedy);
            return remedy;
        case 3:
            return pairs(attempt, Which::all);
        default:
            return remedy;
    }
}

}  // namespace overbend::job
