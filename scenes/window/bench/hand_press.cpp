#include "scenes/window/bench/hand_press.h"

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

#include "render/chart/bent_section.h"
#include "scenes/job/run/profile.h"
#include "sim/stroke/live_stroke.h"

namespace overbend::window {

namespace {

BentStrip read(const BenchMetal& metal, const job::StripStroke& s, stroke::StrokeResult& result) {
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

// A press from its first touch. Way = first_touch + travel.
struct OnePress {
    job::StripStroke stroke;
    std::unique_ptr<stroke::LiveStroke> live;  // none: it is over
    double first_touch = 0.0;
    double depth = -1.0;             // way it was released from last
    std::optional<BentStrip> bent;   // from there
    strip::StripState left;          // the strip that stays
    std::map<double, double> frees;  // way where nothing touches the strip any more, by depth

    void press_to(const BenchMetal& metal, double way) {
        if (bent && depth == way) return;
        const double travel = way - first_touch, reached = live->press_to(travel);
        stroke::StrokeResult result = live->release();
        left = result.free;
        bent = read(metal, stroke, result);
        bent->first_touch = first_touch;
        if (reached < travel - 1e-6) bent->held_by = live->held_by();
        depth = way;
        frees[way] = first_touch + bent->recording.states.back().travel;
    }
};

// On the way back, as an index of a state, with the part of the way to the next one.
double instant_going_back(const BentStrip& bent, double travel) {
    const std::vector<stroke::State>& states = bent.recording.states;
    const auto held = static_cast<std::size_t>(bent.held_instant());
    for (std::size_t i = held; i + 1 < states.size(); ++i) {
        const double above = states[i + 1].travel, below = states[i].travel;
        if (travel < above) continue;
        return static_cast<double>(i) +
               (below > above ? std::clamp((below - travel) / (below - above), 0.0, 1.0) : 0.0);
    }
    return bent.free_instant();
}

}  // namespace

struct HandPress::Inside {
    BenchSetup setup;
    int metal = 0;
    std::vector<OnePress> presses;  // those that have been begun, with the way each was left from
    std::vector<double> ended;      // depth of all but the last
    std::vector<std::shared_ptr<const EarlierPress>> earlier;  // as long as `ended`

    const BenchMetal& it() const { return setup.metals[static_cast<std::size_t>(metal)]; }

    OnePress begin(const strip::StripState* bent) const {
        OnePress p;
        const job::VeeBend vee = vee_of(setup, metal);
        const job::StripCase strip = job::vee_case(vee);
        p.stroke = job::set_up(strip, job::only_step(strip), bent);
        p.live = std::make_unique<stroke::LiveStroke>(p.stroke.scene, stroke::StrokeOptions());
        if (bent)
            p.first_touch =
                presses.front().stroke.scene.tools[0].position.y() - p.stroke.scene.tools[0].position.y();
        return p;
    }

    // The press after that one, whose last depth was this.
    OnePress& after(std::size_t n, double depth) {
        if (n < ended.size() && ended[n] == depth && n + 1 < presses.size()) return presses[n + 1];
        presses.resize(n + 1), ended.resize(n), earlier.resize(n);
        OnePress next = begin(&at(n, depth).left);
        ended.push_back(depth);
        earlier.push_back(
            std::make_shared<EarlierPress>(EarlierPress{presses[n].bent->recording, presses[n].first_touch}));
        presses[n].live.reset();
        presses.push_back(std::move(next));
        return presses.back();
    }
    void renew(std::size_t n) {
        OnePress again = begin(n == 0 ? nullptr : &presses[n - 1].left);
        presses[n].live = std::move(again.live);
    }
    // Press n, released from that depth.
    OnePress& at(std::size_t n, double depth) {
        if (presses[n].depth != depth && !presses[n].live) renew(n);
        presses[n].press_to(it(), depth);
        return presses[n];
    }
    double free_at(std::size_t n, double depth) {
        const auto known = presses[n].frees.find(depth);
        return known != presses[n].frees.end() ? known->second : at(n, depth).frees[depth];
    }
};

HandPress::HandPress(const BenchSetup& setup, int metal) : in_(std::make_unique<Inside>()) {
    in_->setup = setup, in_->metal = metal;
    in_->presses.push_back(in_->begin(nullptr));
}
HandPress::~HandPress() = default;

BentStrip HandPress::follow(const std::vector<BenchMove>& moves) {
    Inside& in = *in_;
    std::size_t n = 0;
    double depth = 0.0, way = 0.0;  // of press n; where the punch is
    bool free = false;
    for (const BenchMove& m : moves) {
        way = m.let_go ? 0.0 : m.way;
        if (m.let_go) {
            free = true;
            continue;
        }
        if (!free && m.way < depth)
            free = m.way <= in.free_at(n, depth);
        else if (!free)
            depth = m.way;
        else if (const double touch = in.after(n, depth).first_touch; m.way > touch) {
            ++n, depth = m.way, free = false;
        }
    }
    const OnePress& p = in.at(n, depth);
    BentStrip bent = *p.bent;
    bent.presses = static_cast<int>(n) + 1;
    bent.earlier.assign(in.earlier.begin(), in.earlier.begin() + static_cast<std::ptrdiff_t>(n));
    bent.punch_travel = way - p.first_touch;
    bent.let_go = free;
    bent.instant = free          ? bent.free_instant()
                   : way < depth ? instant_going_back(bent, bent.punch_travel)
                                 : bent.held_instant();
    // A strip that went no further lies under a punch that went no further.
    if (!free && way >= depth)
        bent.punch_travel = bent.recording.states[static_cast<std::size_t>(bent.held_instant())].travel;
    return bent;
}

}  // namespace overbend::window
