#include "scenes/window/bench/state.h"

#include <algorithm>
#include <cmath>

#include "scenes/files/case/case_error.h"
#include "sim/counted.h"
#include "sim/words.h"

namespace overbend::window {

namespace {

constexpr double way_at_first = 0.6;  // of the deepest

void take(double left, const SliderRange& within, double& into) {
    if (within.has(left)) into = left;
}

// None: its card is gone.
std::optional<BenchMetal> known_metal(const RememberedMetal& left) {
    BenchMetal metal;
    try {
        metal = metal_of(left.card);
    } catch (const files::CaseError&) {
        return {};
    }
    take(left.modulus, moduli, metal.modulus);
    take(left.yield, yields, metal.yield);
    take(left.hardening, hardenings, metal.hardening);
    rename(metal);
    return metal;
}

}  // namespace

BenchState begin_bench(const RememberedBench& left) {
    BenchState state;
    BenchSetup& s = state.setup;
    double part = way_at_first;
    if (!left.metals.empty()) {
        s.kind = left.pure ? BenchKind::pure : BenchKind::vee;
        take(left.thickness, thicknesses, s.thickness);
        take(left.nose_radius, nose_radii, s.nose_radius);
        take(left.opening, openings, s.opening);
        take(left.friction, frictions, s.friction);
        take(left.way, {0.0, 1.0}, part);
        take(left.wanted, wanted_angles, state.wanted);
    }
    for (const RememberedMetal& m : left.metals)
        if (const std::optional<BenchMetal> metal = known_metal(m);
            metal && s.metals.size() < static_cast<std::size_t>(most_metals))
            s.metals.push_back(*metal);
    if (s.metals.empty()) s.metals = {metal_of("dc01")};
    if (trouble_of(s)) {
        BenchSetup fresh;
        fresh.kind = s.kind;
        for (const BenchMetal& m : s.metals) fresh.metals.push_back(metal_of(m.card));
        s = fresh;
    }
    state.depth = part * deepest(s);
    new_strip(state);
    return state;
}

void remember(const BenchState& state, RememberedBench& left) {
    const BenchSetup& s = state.setup;
    left = {s.kind == BenchKind::pure,
            s.thickness,
            s.nose_radius,
            s.opening,
            s.friction,
            state.depth / deepest(s),
            state.wanted,
            {}};
    for (const BenchMetal& m : s.metals) left.metals.push_back({m.card, m.modulus, m.yield, m.hardening});
}

BenchMetal& chosen(BenchState& state) {
    return state.setup.metals[static_cast<std::size_t>(state.metal)];
}

void take_kind(BenchState& state, BenchKind kind) {
    const double part = state.depth / deepest(state.setup);
    state.setup.kind = kind;
    state.depth = part * deepest(state.setup);
    new_strip(state);
}

void take_card(BenchState& state, const std::string& card) {
    chosen(state) = metal_of(card);
}

void add_metal(BenchState& state, const std::vector<std::string>& cards) {
    if (state.setup.metals.size() >= most_metals || cards.empty()) return;
    // Those that spring back by much and by little come first.
    std::vector<std::string> order = {"stainless-1.4310", "aluminium-6061-t6", "spring-steel-c75s-hardened"};
    order.insert(order.end(), cards.begin(), cards.end());
    for (const std::string& card : order) {
        const bool known = std::find(cards.begin(), cards.end(), card) != cards.end();
        const bool there = std::any_of(state.setup.metals.begin(), state.setup.metals.end(),
                                       [&](const BenchMetal& m) { return m.card == card; });
        if (!known || there) continue;
        state.setup.metals.push_back(metal_of(card));
        state.metal = static_cast<int>(state.setup.metals.size()) - 1;
        return;
    }
}

void remove_metal(BenchState& state) {
    if (state.setup.metals.size() < 2) return;
    state.setup.metals.erase(state.setup.metals.begin() + state.metal);
    state.metal = std::min(state.metal, static_cast<int>(state.setup.metals.size()) - 1);
}

void next_metal(BenchState& state) {
    state.metal = (state.metal + 1) % static_cast<int>(state.setup.metals.size());
}

void reset(BenchState& state) {
    BenchSetup fresh;
    fresh.kind = state.setup.kind;
    for (const BenchMetal& m : state.setup.metals) fresh.metals.push_back(metal_of(m.card));
    state.setup = fresh;
    state.depth = way_at_first * deepest(fresh);
    new_strip(state);
}

bool worn(const BenchState& state) {
    return state.moves.size() >= most_moves;
}

void press_to(BenchState& state, double wanted) {
    const double most = deepest(state.setup), now = state.way;
    const bool pure = state.setup.kind == BenchKind::pure;
    const double way = std::clamp(wanted, pure ? -most : 0.0, most);
    if (told(state) == FreeAngle::hidden && way < now) return;
    std::vector<BenchMove>& moves = state.moves;
    const double before = moves.size() < 2                 ? 0.0
                          : moves[moves.size() - 2].let_go ? now
                                                           : moves[moves.size() - 2].way;
    const bool turns = (way - now) * (now - before) < 0.0;
    const bool begins = moves.back().let_go;
    if ((turns || begins) && worn(state) && (pure || way > now)) return;
    if (begins && way == now && !pure) return;
    if (turns || begins)
        moves.push_back({way});
    else
        moves.back().way = way;
    if (pure ? way != now : way > now) state.depth = way;
    state.way = way;
    state.phase = BenchPhase::pressed;
}

void new_strip(BenchState& state) {
    const double most = deepest(state.setup);
    state.depth = std::clamp(state.depth, state.setup.kind == BenchKind::pure ? -most : 0.0, most);
    state.way = state.depth;
    state.moves = {{state.way}};
    state.phase = BenchPhase::pressed;
}

void press_flat(BenchState& state, double way) {
    state.depth = way;
    new_strip(state);
}

void renew_strip(BenchState& state) {
    const bool let_go = state.moves.back().let_go || state.phase == BenchPhase::springing_back;
    new_strip(state);
    if (!let_go || told(state) == FreeAngle::hidden) return;
    if (state.setup.kind == BenchKind::vee) state.way = 0.0;
    state.moves.push_back({0.0, true});
    state.phase = BenchPhase::free;
}

void press_again(BenchState& state) {
    press_to(state, state.depth);
}

void release(BenchState& state) {
    if (told(state) == FreeAngle::hidden || state.moves.back().let_go) return;
    state.phase = BenchPhase::springing_back;
    state.seconds = 0.0;
    state.raised_from = state.way;
}

void advance(BenchState& state, double seconds) {
    if (state.phase != BenchPhase::springing_back) return;
    state.seconds += seconds;
    const bool over = state.seconds >= spring_seconds;
    if (state.setup.kind == BenchKind::vee) {
        // Slowly at first, while the strip still follows.
        const double s = std::min(1.0, state.seconds / spring_seconds);
        press_to(state, over ? 0.0 : state.raised_from * (1.0 - s * s * s));
    }
    state.phase = over ? BenchPhase::free : BenchPhase::springing_back;
    if (over) state.moves.push_back({0.0, true});
}

double released_part(const BenchState& state) {
    if (state.phase == BenchPhase::pressed) return 0.0;
    if (state.phase == BenchPhase::free) return 1.0;
    const double part = std::clamp(state.seconds / spring_seconds, 0.0, 1.0);
    return part * part * (3.0 - 2.0 * part);
}

void begin_game(BenchState& state) {
    state.game = {GuessStage::guessing, 1, {}};
    state.typed_wrong.clear();
    new_strip(state);  // what is free already would be told
}

void end_game(BenchState& state) {
    state.game = {};
    state.typed_wrong.clear();
}

void take_guess(BenchState& state) {
    if (state.game.stage != GuessStage::guessing) return;
    if (add_guess(state.game, state.typed)) {
        state.typed.clear(), state.typed_wrong.clear();
    } else {
        state.typed_wrong =
            "\"" + state.typed + "\" does not end with an angle; type 88.5 or Ann 88.5, from 0 to 180.";
    }
}

void show_angle(BenchState& state) {
    if (state.game.stage != GuessStage::guessing) return;
    state.game.stage = GuessStage::shown;
    release(state);
}

void new_round(BenchState& state, const std::vector<std::string>& cards) {
    const Round round = next_round(state.chance, cards, chosen(state).card);
    state.setup.metals = {metal_of(round.card)};
    state.metal = 0;
    state.depth = round.way * deepest(state.setup);
    new_strip(state);
    state.game = {GuessStage::guessing, state.game.round + 1, {}};
    state.typed_wrong.clear();
}

FreeAngle told(const BenchState& state) {
    return state.game.stage == GuessStage::guessing ? FreeAngle::hidden : FreeAngle::told;
}

std::string game_line(const BenchState& state, double angle) {
    if (state.game.stage == GuessStage::off) return "";
    const int count = static_cast<int>(state.game.guesses.size());
    if (state.game.stage == GuessStage::guessing)
        return count == 0 ? "What is the bend angle after release?"
                          : "What is the bend angle after release? " +
                                counted(static_cast<std::size_t>(count), "guess", "guesses") + ".";
    const std::vector<Judged> all = judged(state.game, angle);
    if (all.empty()) return "No guesses.";
    const Guess& best = all.front().guess;
    return words("Closest: %s%.1f°, off by %.1f°", best.who.empty() ? "" : (best.who + ", ").c_str(),
                 best.angle, std::abs(all.front().off));
}

}  // namespace overbend::window
