#include "scenes/window/bench/press.h"

#include <algorithm>
#include <cmath>
#include <future>
#include <utility>

#include "render/chart/bent_section.h"
#include "scenes/job/run/profile.h"
#include "sim/errors.h"
#include "sim/words.h"

namespace overbend::window {

namespace {

// One strip in the press.
struct Place {
    job::StripStroke stroke;
    std::unique_ptr<stroke::LiveStroke> live;
};

BentStrip read(const BenchMetal& metal, const job::StripStroke& s, stroke::StrokeResult result) {
    BentStrip bent;
    bent.metal = metal;
    bent.recording = std::move(result.recording);
    const double left = s.bends.front().left, right = s.bends.front().right;
    const stroke::State& held = bent.recording.states[static_cast<std::size_t>(bent.held_instant())];
    const job::BendShape loaded = job::bend_shape(bent.recording, held, left, right);
    const job::BendShape free = job::bend_shape(bent.recording, bent.recording.states.back(), left, right);
    bent.loaded = loaded.angle, bent.radius_loaded = loaded.inside_radius;
    bent.free = free.angle, bent.radius_free = free.inside_radius;
    bent.section_at = chart::find_section(bent.recording, left, right).blank_position;
    return bent;
}

}  // namespace

struct BenchPress::Inside {
    BenchSetup setup;
    std::vector<Place> places;
    std::vector<BentStrip> strips, deepest;
    double limit = 0.0;
    std::string limited_by;

    // As far as each goes.
    BentStrip bend(std::size_t i, double way) {
        if (setup.kind == BenchKind::pure) return bend_purely(setup, static_cast<int>(i), way);
        Place& p = places[i];
        const double reached = p.live->press_to(way);
        BentStrip bent = read(setup.metals[i], p.stroke, p.live->release());
        if (reached < way - 1e-6) bent.held_by = p.live->held_by();
        return bent;
    }
    // Each on its own thread: they share nothing.
    std::vector<BentStrip> bend_all(double way) {
        std::vector<std::future<BentStrip>> others;
        for (std::size_t i = 1; i < setup.metals.size(); ++i)
            others.push_back(std::async(std::launch::async, [this, i, way] { return bend(i, way); }));
        std::vector<BentStrip> bent;
        bent.push_back(bend(0, way));
        for (auto& other : others) bent.push_back(other.get());
        return bent;
    }
};

BenchPress::BenchPress(const BenchSetup& setup) : in_(std::make_unique<Inside>()) {
    in_->setup = setup;
    if (setup.kind == BenchKind::vee)
        for (std::size_t i = 0; i < setup.metals.size(); ++i) {
            job::StripStroke s = job::vee_stroke(vee_of(setup, static_cast<int>(i)));
            auto live = std::make_unique<stroke::LiveStroke>(s.scene, stroke::StrokeOptions());
            in_->places.push_back({std::move(s), std::move(live)});
        }
    in_->limit = deepest(setup);
    // The least of them is the limit of all.
    for (int turn = 0; turn < 3; ++turn) {
        in_->deepest = in_->bend_all(in_->limit);
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

double BenchPress::bend_to(double way) {
    const double held = std::clamp(way, 0.0, in_->limit);
    in_->strips = in_->bend_all(held);
    return held;
}

Overbend overbend_for(const BenchSetup& setup, int metal, double wanted,
                      const std::function<bool()>& goes_on) {
    Overbend found;
    found.setup = setup;
    found.wanted = wanted;
    if (setup.kind == BenchKind::pure) {
        double low = 0.0, high = deepest(setup);
        BentStrip bent = bend_purely(setup, metal, high);
        if (bent.free < wanted) {
            found.reason = "The strip cannot be bent that far with these tools.";
            return found;
        }
        for (int i = 0; i < 40 && std::abs(bent.free - wanted) > 1e-5 && goes_on(); ++i) {
            found.way = 0.5 * (low + high);
            bent = bend_purely(setup, metal, found.way);
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
