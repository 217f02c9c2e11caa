#include "sim/plan/bend_order.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <queue>
#include <set>
#include <string>
#include <tuple>

#include "sim/errors.h"

namespace overbend::plan {

namespace {

constexpr double never = std::numeric_limits<double>::infinity();

struct SetUp {
    int tools = -1;
    bool face_down = false, right_first = false;
    long gauge = 0;  // in steps of same_gauge
    bool operator<(const SetUp& o) const {
        return std::tie(tools, face_down, right_first, gauge) <
               std::tie(o.tools, o.face_down, o.right_first, o.gauge);
    }
};

OrderWork& operator+=(OrderWork& sum, const OrderWork& w) {
    sum.strokes += w.strokes, sum.turns += w.turns, sum.flips += w.flips;
    sum.tool_changes += w.tool_changes, sum.gauge_changes += w.gauge_changes, sum.slides += w.slides;
    return sum;
}

// A stroke that can come next, and the number of its set-up.
struct Next {
    int way = 0, set_up = 0;
    BendSet after = 0;
    Use use;
};

class Search {
  public:
    explicit Search(const OrderProblem& problem)
        : problem_(problem), all_((BendSet{1} << problem.bends) - 1), at_(all_ + 1) {
        set_ups_.push_back({});  // nothing stands in the press yet
        numbers_[set_ups_.front()] = 0;
    }

    OrderSearch run(int how_many) {
        OrderSearch found;
        if (to_finish(0, 0) < never) found.best = unroll(how_many);
        collect_reached(found);
        found.asked = asked_;
        return found;
    }

  private:
    // Search data of one set of made bends.
    struct At {
        bool known = false;
        std::vector<Next> nexts;
        std::vector<double> to_finish;  // by set-up; < 0: not worked out yet
    };

    const std::vector<Next>& nexts(BendSet made) {
        At& at = at_[made];
        if (at.known) return at.nexts;
        at.known = true;
        for (int w = 0; w < static_cast<int>(problem_.ways.size()); ++w) {
            const Way& way = problem_.ways[w];
            if (way.bends & made) continue;
            const Use use = problem_.use(w, made);
            ++asked_;
            if (!use.possible) continue;
            at.nexts.push_back({w, number_of(way, use), made | way.bends, use});
        }
        return at.nexts;
    }

    int number_of(const Way& way, const Use& use) {
        const SetUp s{way.tools, way.face_down, way.right_first, std::lround(use.gauge / same_gauge)};
        const auto [found, is_new] = numbers_.insert({s, static_cast<int>(set_ups_.size())});
        if (is_new) set_ups_.push_back(s);
        return found->second;
    }

    OrderWork work_of(int before, const Next& next) const {
        const SetUp &a = set_ups_[before], &b = set_ups_[next.set_up];
        OrderWork w;
        w.strokes = 1;
        w.slides = next.use.slides;
        const bool first = before == 0;
        w.tool_changes = first || a.tools != b.tools;
        w.gauge_changes = first || a.gauge != b.gauge;
        w.turns = !first && a.right_first != b.right_first;
        w.flips = !first && a.face_down != b.face_down;
        return w;
    }

    double cost(int before, const Next& next) const { return work_of(before, next).seconds(problem_.costs); }

    // Least seconds from this set and set-up to the finished part.
    double to_finish(BendSet made, int set_up) {
        if (made == all_) return 0.0;
        {
            const std::vector<double>& known = at_[made].to_finish;
            if (set_up < static_cast<int>(known.size()) && known[set_up] >= 0.0) return known[set_up];
        }
        double least = never;
        for (const Next& next : nexts(made)) {
            const double here = cost(set_up, next);
            if (here >= least) continue;  // what follows costs nothing or more
            least = std::min(least, here + to_finish(next.after, next.set_up));
        }
        std::vector<double>& known = at_[made].to_finish;
        if (set_up >= static_cast<int>(known.size())) known.resize(set_up + 1, -1.0);
        return known[set_up] = least;
    }

    // Best first: with the exact cost of what is left no path is taken up that is not wanted.
    struct Path {
        double seconds = 0.0;  // spent and still to spend
        double spent = 0.0;
        BendSet made = 0;
        int set_up = 0;
        std::vector<OrderStroke> strokes;
        OrderWork work;
    };
    struct Dearer {
        bool operator()(const Path& a, const Path& b) const {
            if (a.seconds != b.seconds) return a.seconds > b.seconds;
            return a.strokes.size() < b.strokes.size();  // of equal ones, the one nearest to its end
        }
    };

    std::vector<Order> unroll(int how_many) {
        constexpr int most_paths =
            50000;  // past that, orders that differ in no bend and no tool fill the list
        std::vector<Order> orders;
        std::set<std::vector<std::pair<BendSet, int>>> seen;
        std::priority_queue<Path, std::vector<Path>, Dearer> open;
        open.push({to_finish(0, 0), 0.0, 0, 0, {}, {}});
        for (int i = 0; i < most_paths && !open.empty() && static_cast<int>(orders.size()) < how_many; ++i) {
            const Path path = open.top();
            open.pop();
            if (path.made == all_) {
                if (seen.insert(signature(path)).second)
                    orders.push_back({path.strokes, path.work, path.work.seconds(problem_.costs)});
                continue;
            }
            for (const Next& next : nexts(path.made)) {
                const double rest = to_finish(next.after, next.set_up);
                if (rest == never) continue;
                Path longer = path;
                longer.spent += cost(path.set_up, next);
                longer.seconds = longer.spent + rest;
                longer.made = next.after, longer.set_up = next.set_up;
                longer.strokes.push_back({next.way, path.made, next.use});
                longer.work += work_of(path.set_up, next);
                open.push(longer);
            }
        }
        return orders;
    }

    std::vector<std::pair<BendSet, int>> signature(const Path& path) const {
        std::vector<std::pair<BendSet, int>> all;
        for (const OrderStroke& s : path.strokes)
            all.emplace_back(problem_.ways[s.way].bends, problem_.ways[s.way].tools);
        return all;
    }

    void collect_reached(OrderSearch& found) {
        std::vector<char> reached(at_.size(), 0);
        reached[0] = 1;
        int most = 0;
        for (BendSet made = 0; made <= all_; ++made) {  // every stroke leads to a larger number
            if (!reached[made]) continue;
            ++found.sets;
            int count = 0;
            for (BendSet left = made; left; left &= left - 1) ++count;
            if (count > most) most = count, found.furthest.clear();
            if (count == most) found.furthest.push_back(made);
            if (!at_[made].known) continue;
            for (const Next& next : at_[made].nexts) reached[next.after] = 1;
        }
        if (!found.best.empty()) found.furthest.clear();
    }

    const OrderProblem& problem_;
    const BendSet all_;
    std::vector<At> at_;
    std::vector<SetUp> set_ups_;
    std::map<SetUp, int> numbers_;
    long asked_ = 0;
};

void check(const OrderProblem& problem) {
    if (problem.bends < 1 || problem.bends > most_bends_to_order)
        throw OutOfRange("bends", std::to_string(problem.bends) + " cannot be ordered",
                         "give 1 to " + std::to_string(most_bends_to_order));
    for (const Way& way : problem.ways)
        if (way.bends == 0 || (way.bends >> problem.bends) != 0)
            throw OutOfRange("way", "it makes no bend, or one that does not exist",
                             "use the bends of the part");
}

}  // namespace

double OrderWork::seconds(const OrderCosts& c) const {
    return strokes * c.stroke + turns * c.turn + flips * c.flip + tool_changes * c.tool_change +
           gauge_changes * c.gauge_change + slides * c.slide;
}

OrderSearch best_orders(const OrderProblem& problem, int how_many) {
    check(problem);
    return Search(problem).run(std::max(1, how_many));
}

}  // namespace overbend::plan
