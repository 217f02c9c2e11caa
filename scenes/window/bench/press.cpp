#include "scenes/window/bench/press.h"

#include <algorithm>
#include <cmath>
#include <future>
#include <utility>

#include "scenes/window/bench/hand_press.h"
#include "sim/units.h"

namespace overbend::window {

struct BenchPress::Inside {
    BenchSetup setup;
    std::vector<std::unique_ptr<HandPress>> places;  // in the V tools
    std::vector<BentStrip> strips, deepest;
    double limit = 0.0;
    std::string limited_by;

    BentStrip bend(std::size_t i, const std::vector<BenchMove>& moves, double released) {
        if (setup.kind == BenchKind::pure) return bend_purely(setup, static_cast<int>(i), moves, released);
        return places[i]->follow(moves);
    }
    // Each on its own thread: they share nothing.
    std::vector<BentStrip> bend_all(const std::vector<BenchMove>& moves, double released) {
        std::vector<std::future<BentStrip>> others;
        for (std::size_t i = 1; i < setup.metals.size(); ++i)
            others.push_back(std::async(std::launch::async,
                                        [this, i, &moves, released] { return bend(i, moves, released); }));
        std::vector<BentStrip> bent;
        bent.push_back(bend(0, moves, released));
        for (auto& other : others) bent.push_back(other.get());
        return bent;
    }
};

BenchPress::BenchPress(const BenchSetup& setup) : in_(std::make_unique<Inside>()) {
    in_->setup = setup;
    if (setup.kind == BenchKind::vee)
        for (std::size_t i = 0; i < setup.metals.size(); ++i)
            in_->places.push_back(std::make_unique<HandPress>(setup, static_cast<int>(i)));
    in_->limit = deepest(setup);
    // The least of them is the limit of all.
    for (int turn = 0; turn < 3; ++turn) {
        in_->deepest = in_->bend_all({{in_->limit}}, 0.0);
        const double before = in_->limit;
        for (const BentStrip& b : in_->deepest)
            if (!b.held_by.empty()) {
                const double reached = b.recording.states[static_cast<std::size_t>(b.held_instant())].travel;
                if (reached >= in_->limit) continue;
                in_->limit = reached;
                in_->limited_by = b.metal.name + ": " + b.held_by;
            }
        if (in_->limit == before) break;
    }
    in_->strips = in_->deepest;
}
BenchPress::~BenchPress() = default;

const BenchSetup& BenchPress::setup() const {
    return in_->setup;
}
double BenchPress::way_limit() const {
    return in_->limit;
}
const std::string& BenchPress::limited_by() const {
    return in_->limited_by;
}
const std::vector<BentStrip>& BenchPress::deepest_strips() const {
    return in_->deepest;
}
const std::vector<BentStrip>& BenchPress::strips() const {
    return in_->strips;
}

void BenchPress::follow(const std::vector<BenchMove>& moves, double released) {
    std::vector<BenchMove> held = moves;
    const double low = in_->setup.kind == BenchKind::pure ? -in_->limit : 0.0;
    for (BenchMove& m : held) m.way = std::clamp(m.way, low, in_->limit);
    in_->strips = in_->bend_all(held, released);
}

bool same(const BenchMove& a, const BenchMove& b) {
    return a.let_go == b.let_go && (a.let_go || a.way == b.way);
}

double written_springback(double loaded, double free) {
    const auto tenths = [](double angle) { return std::round(10.0 * angle / degree); };
    return (tenths(loaded) - tenths(free)) / 10.0;
}

Overbend overbend_for(const BenchSetup& setup, int metal, double wanted,
                      const std::function<bool()>& goes_on) {
    Overbend found;
    found.setup = setup;
    found.wanted = wanted;
    if (setup.kind == BenchKind::pure) {
        double low = 0.0, high = deepest(setup);
        BentStrip bent = bend_purely(setup, metal, {{high}});
        if (bent.free < wanted) {
            found.reason = "The strip cannot be bent that far with these tools.";
            return found;
        }
        for (int i = 0; i < 40 && std::abs(bent.free - wanted) > 1e-5 && goes_on(); ++i) {
            found.way = 0.5 * (low + high);
            bent = bend_purely(setup, metal, {{found.way}});
            (bent.free < wanted ? low : high) = found.way;
        }
        found.loaded = bent.loaded, found.free = bent.free;
        return found;
    }
    stroke::StrokeOptions options;
    options.record = false;
    options.progress = [&](double, double) { return goes_on(); };
    stroke::Stop stop{stroke::StopKind::free_angle, wanted};
    const job::VeeResult r = job::bend_vee(vee_of(setup, metal), stop, options);
    found.loaded = r.loaded, found.free = r.free, found.way = r.stroke.stop_travel;
    if (r.stroke.outcome != stroke::Outcome::reached) found.reason = r.stroke.reason;
    return found;
}

}  // namespace overbend::window
