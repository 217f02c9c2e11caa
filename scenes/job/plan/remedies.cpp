#include "scenes/job/plan/remedies.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "scenes/files/case/work.h"
#include "scenes/job/plan/clear_tools.h"
#include "scenes/job/plan/propose_vee.h"

namespace overbend::job {

namespace {

void add(const files::Case& c, const files::ProposedTools& proposed, Remedy& remedy) {
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

// The kind of work that makes a bend and the next one in a stroke, with tools that can be proposed.
const files::WorkKind* one_stroke(const files::Case& c, int left) {
    const files::Bend &a = c.part.bends[left], &b = c.part.bends[left + 1];
    for (const files::WorkKind& work : files::work_kinds())
        if (work.propose && files::are_its_pair(work, a, b) && files::have_like_angles(a, b) &&
            work.proposed_for.holds(std::abs(a.angle)))
            return &work;
    return nullptr;
}

bool has_pair(const Attempt& attempt, int left) {
    return std::any_of(attempt.choices.possible.begin(), attempt.choices.possible.end(),
                       [left](const files::Step& choice) {
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
        const files::WorkKind* work = one_stroke(attempt.c, b);
        if (!work || has_pair(attempt, b)) continue;
        if (which == Which::blocked && !block_one_another(attempt, b, b + 1)) continue;
        add(attempt.c, work->propose(attempt.c, attempt.blank, {b, b + 1}), remedy);
    }
    return remedy;
}

}  // namespace

Remedy remedy_for(Attempt& attempt, Help help, VeeTrials& trials) {
    if (help == Help::blocked_pairs) return pairs(attempt, Which::blocked);
    if (help == Help::all_pairs) return pairs(attempt, Which::all);
    Remedy remedy;
    const files::Case& c = attempt.c;
    if (help == Help::room) {
        if (attempt.choices.unserved.empty()) add(c, clear_tools(attempt, trials), remedy);
        return remedy;
    }
    add(c, propose_vee(c, attempt.blank, attempt.choices.unserved, trials), remedy);
    return remedy;
}

}  // namespace overbend::job
