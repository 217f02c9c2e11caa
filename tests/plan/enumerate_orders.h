// Every order of a problem, one after the other, for checks of the search.

#pragma once

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>
#include <vector>

#include "sim/plan/bend_order.h"

namespace overbend::tests {

struct Enumerated {
    std::vector<double> seconds;          // of the cheapest of each sequence of bends and tools, rising
    std::vector<plan::BendSet> furthest;  // when there is no order: the largest sets that can be made
    long orders = 0;                      // that lead to the end
};

namespace enumeration {

using Signature = std::vector<std::pair<plan::BendSet, int>>;

inline double step_seconds(const plan::OrderCosts& c, const plan::Way* last, double last_gauge,
                           const plan::Way& way, const plan::Use& use) {
    const auto notch = [](double gauge) { return std::lround(gauge / plan::same_gauge); };
    double seconds = c.stroke + c.slide * use.slides;
    if (!last || last->tools != way.tools) seconds += c.tool_change;
    if (!last || notch(last_gauge) != notch(use.gauge)) seconds += c.gauge_change;
    if (last && last->right_first != way.right_first) seconds += c.turn;
    if (last && last->face_down != way.face_down) seconds += c.flip;
    return seconds;
}

struct Walk {
    const plan::OrderProblem& problem;
    plan::BendSet all;
    std::map<Signature, double> cheapest;
    std::map<plan::BendSet, bool> reached;
    long orders = 0;

    void go(plan::BendSet made, int last_way, double last_gauge, double spent, Signature& so_far) {
        reached[made] = true;
        if (made == all) {
            ++orders;
            const auto [at, is_new] = cheapest.insert({so_far, spent});
            if (!is_new) at->second = std::min(at->second, spent);
            return;
        }
        for (int w = 0; w < static_cast<int>(problem.ways.size()); ++w) {
            const plan::Way& way = problem.ways[w];
            if (way.bends & made) continue;
            const plan::Use use = problem.use(w, made);
            if (!use.possible) continue;
            const plan::Way* last = last_way < 0 ? nullptr : &problem.ways[last_way];
            const double more = step_seconds(problem.costs, last, last_gauge, way, use);
            so_far.emplace_back(way.bends, way.tools);
            go(made | way.bends, w, use.gauge, spent + more, so_far);
            so_far.pop_back();
        }
    }
};

}  // namespace enumeration

inline Enumerated enumerate_orders(const plan::OrderProblem& problem) {
    enumeration::Walk walk{problem, (plan::BendSet{1} << problem.bends) - 1, {}, {}, 0};
    enumeration::Signature none;
    walk.go(0, -1, 0.0, 0.0, none);
    Enumerated found;
    found.orders = walk.orders;
    for (const auto& [signature, seconds] : walk.cheapest) found.seconds.push_back(seconds);
    std::sort(found.seconds.begin(), found.seconds.end());
    if (!found.seconds.empty()) return found;
    int most = 0;
    for (const auto& [set, yes] : walk.reached) {
        int count = 0;
        for (plan::BendSet left = set; left; left &= left - 1) ++count;
        if (count > most) most = count, found.furthest.clear();
        if (count == most) found.furthest.push_back(set);
    }
    return found;
}

// What these ways cost one after the other; 1e300 when one cannot be used.
inline double seconds_of(const plan::OrderProblem& problem, const std::vector<int>& ways) {
    plan::BendSet made = 0;
    const plan::Way* last = nullptr;
    double last_gauge = 0.0, seconds = 0.0;
    for (const int w : ways) {
        const plan::Way& way = problem.ways[w];
        const plan::Use use = problem.use(w, made);
        if (!use.possible) return 1e300;
        seconds += enumeration::step_seconds(problem.costs, last, last_gauge, way, use);
        made |= way.bends;
        last = &way, last_gauge = use.gauge;
    }
    return seconds;
}

}  // namespace overbend::tests
