// The bench without a window: metals whose figures are changed, what cannot be made, strips that are bent as
// in any other stroke, the overbend, the game.

#include <doctest/doctest.h>

#include <cmath>

#include "render/chart/section_now.h"
#include "scenes/files/case/read_card.h"
#include "scenes/window/bench/state.h"
#include "sim/material/pure_bending.h"
#include "sim/units.h"

using namespace overbend;
using namespace overbend::files;
using namespace overbend::job;
using namespace overbend::window;

namespace {

BenchSetup setup_of(const std::vector<std::string>& cards, BenchKind kind = BenchKind::vee) {
    BenchSetup setup;
    setup.kind = kind;
    for (const std::string& card : cards) setup.metals.push_back(metal_of(card));
    return setup;
}

}  // namespace

TEST_CASE("figures of every card, as they are and changed") {
    for (const std::string& name : known_cards()) {
        CAPTURE(name);
        BenchMetal m = metal_of(name);
        const material::Card own = card_of(m), read = read_card(name, ".");
        for (const double p : {0.0, 0.01, 0.3})
            CHECK(material::flow_point(own.hardening, own.youngs_modulus, p).stress ==
                  material::flow_point(read.hardening, read.youngs_modulus, p).stress);
        m.modulus *= 0.8, m.yield *= 1.3, m.hardening *= 0.5;
        const material::Card changed = card_of(m);
        CHECK(changed.youngs_modulus == doctest::Approx(m.modulus));
        CHECK(yield_of(changed) == doctest::Approx(m.yield));
        CHECK(hardening_of(changed) == doctest::Approx(m.hardening));
        CHECK_NOTHROW(material::check(changed));
        m.hardening = 0.0;
        CHECK(hardening_of(card_of(m)) == doctest::Approx(0.0).epsilon(0.01 * m.yield));
    }
}

TEST_CASE("a strip on the bench is bent as in a stroke of its own") {
    const BenchSetup setup = setup_of({"dc01", "stainless-1.4310"});
    BenchPress press(setup);
    for (const double way : {1.2, 2.9, 2.0}) {
        press.bend_to(way);
        for (int i = 0; i < 2; ++i) {
            CAPTURE(way);
            CAPTURE(i);
            const VeeResult alone = bend_vee(vee_of(setup, i), {stroke::StopKind::travel, way}, {});
            CHECK(press.strips()[i].loaded == doctest::Approx(alone.loaded).epsilon(1e-6));
            CHECK(press.strips()[i].free == doctest::Approx(alone.free).epsilon(1e-6));
        }
    }
    CHECK(press.strips()[1].springback() > press.strips()[0].springback());
}

TEST_CASE("the punch goes up, and the strip springs back and stays bent") {
    const BenchSetup setup = setup_of({"dc01"});
    BenchPress press(setup);
    press.follow({{3.0}});
    const BentStrip held = press.strips()[0];
    CHECK_FALSE(held.let_go);
    CHECK(held.instant == held.held_instant());
    // Nowhere on its way up is it bent less than it is free in the end.
    const double free = held.free;
    bool touched_on_the_way = false;
    for (double way = 3.0; way >= 0.0; way -= 0.05) {
        CAPTURE(way);
        press.follow({{3.0}, {way}});
        const BentStrip& s = press.strips()[0];
        CHECK(s.free == doctest::Approx(free).epsilon(1e-9));
        const stroke::State now = picture::state_at(s.recording, s.instant);
        const double turn = now.theta.back() - now.theta.front();
        CHECK(turn > free - 0.2 * degree);
        CHECK(turn < held.loaded + 0.2 * degree);
        touched_on_the_way = touched_on_the_way || (way < 3.0 && !s.let_go);
    }
    CHECK(touched_on_the_way);
    CHECK(press.strips()[0].let_go);
    CHECK(press.strips()[0].presses == 1);
}

TEST_CASE("a punch that turns down before the strip is free goes on with the same press") {
    const BenchSetup setup = setup_of({"dc01"});
    BenchPress press(setup);
    press.follow({{2.0}, {1.99}, {2.6}});
    CHECK(press.strips()[0].presses == 1);
    BenchPress straight(setup);
    straight.bend_to(2.6);
    CHECK(press.strips()[0].free == straight.strips()[0].free);
}

TEST_CASE("the next press begins from the bent strip") {
    const BenchSetup setup = setup_of({"stainless-1.4310"});
    BenchPress press(setup);
    press.follow({{2.4}, {0.0}});
    const BentStrip first = press.strips()[0];
    press.follow({{2.4}, {0.0}, {first.first_touch + 1.0}});
    const BentStrip& above = press.strips()[0];
    CHECK(above.let_go);  // the punch comes down, but the strip is bent away from it
    CHECK(above.presses == 1);

    // As far as before: no further than before, since it goes back the way it came; further: it yields on.
    press.follow({{2.4}, {0.0}, {2.4}});
    const BentStrip again = press.strips()[0];
    CHECK(again.presses == 2);
    CHECK(again.first_touch > 1.0);
    CHECK(again.earlier.size() == 1);
    CHECK(again.loaded / degree == doctest::Approx(first.loaded / degree).epsilon(0.01));
    CHECK(again.free / degree > first.free / degree - 0.1);
    CHECK(again.free / degree < first.free / degree + 1.0);
    press.follow({{2.4}, {0.0}, {3.2}, {0.0}, {3.3}});
    const BentStrip third = press.strips()[0];
    CHECK(third.presses == 3);
    CHECK(third.free > again.free + 10.0 * degree);

    // What comes of it does not hang on how the bench was moved before.
    BenchPress fresh(setup);
    fresh.follow({{2.4}, {0.0}, {3.2}, {0.0}, {3.3}});
    CHECK(fresh.strips()[0].free == doctest::Approx(third.free).epsilon(1e-6));

    // Every press against one set up by itself.
    const job::StripCase strip = job::vee_case(vee_of(setup, 0));
    const strip::StripState bent = stroke::press(
                                       [&] {
                                           stroke::StrokeScene scene =
                                               job::set_up(strip, job::only_step(strip)).scene;
                                           scene.stop.value = 2.4;
                                           return scene;
                                       }(),
                                       {})
                                       .free;
    job::StripStroke second = job::set_up(strip, job::only_step(strip), &bent);
    const stroke::StrokeResult alone =
        press_strip(second, {stroke::StopKind::travel, 2.4 - again.first_touch}, {}).stroke;
    CHECK(alone.solved());
    const stroke::State& end = alone.recording.states.back();
    CHECK(end.theta.back() - end.theta.front() == doctest::Approx(again.free).epsilon(1e-3));
}

TEST_CASE("pure bending: a strip goes on where it was, hardens, and is bent back") {
    // Without back stresses what is released and bent again comes back to where it was, by the flow curve's
    // definition; and beyond flat it is as strong as it has become, so stronger than at first.
    const BenchSetup setup = setup_of({"dc01"}, BenchKind::pure);
    REQUIRE(card_of(setup.metals[0]).backstress.empty());
    const auto moment = [&](const std::vector<BenchMove>& moves) {
        const BentStrip s = bend_purely(setup, 0, moves);
        return chart::section_now(s.recording, s.held_instant(), s.section_at).at.moment;
    };
    CHECK(moment({{0.1}, {0.0, true}, {0.1}}) == doctest::Approx(moment({{0.1}})).epsilon(1e-3));
    CHECK(moment({{0.1}, {0.0, true}, {0.15}}) == doctest::Approx(moment({{0.15}})).epsilon(2e-3));
    CHECK(std::abs(moment({{0.1}, {-0.02}})) > 1.1 * std::abs(moment({{0.02}})));
    const BentStrip back = bend_purely(setup, 0, {{0.1}, {0.0}, {0.0, true}});
    CHECK(back.let_go);
    CHECK(std::abs(back.loaded) < 0.1 * degree);
    CHECK(back.free > 1.0 * degree);  // bent flat it springs back to where it came from
    CHECK(bend_purely(setup, 0, {{0.1}, {0.0, true}, {0.12}}).presses == 2);
}

TEST_CASE("what is written as springback is the difference of what is written beside it") {
    CHECK(written_springback(79.54 * degree, 77.76 * degree) == doctest::Approx(1.7));
    CHECK(written_springback(79.45 * degree, 77.84 * degree) == doctest::Approx(1.7));
    CHECK(written_springback(-1.04 * degree, 0.06 * degree) == doctest::Approx(-1.1));
}

TEST_CASE("a state follows the punch: it turns, releases, presses again, and takes a new strip") {
    BenchState state = begin_bench({});
    const double first = state.way;
    CHECK(state.moves.size() == 1);
    press_to(state, first + 0.5), press_to(state, first + 0.6);
    CHECK(state.moves.size() == 1);
    CHECK(state.depth == doctest::Approx(first + 0.6));
    press_to(state, first), press_to(state, first - 0.2);
    CHECK(state.moves.size() == 2);
    CHECK(state.depth == doctest::Approx(first + 0.6));
    release(state);
    for (int i = 0; i < 40; ++i) advance(state, 0.05);
    CHECK(state.phase == BenchPhase::free);
    CHECK(state.moves.back().let_go);
    CHECK(state.way == 0.0);
    press_again(state);
    CHECK(state.way == doctest::Approx(first + 0.6));
    CHECK(state.phase == BenchPhase::pressed);
    state.setup.thickness = 1.1;
    renew_strip(state);
    CHECK(state.moves.size() == 1);
    CHECK(state.way == doctest::Approx(first + 0.6));
    // While a class guesses the punch does not go up.
    begin_game(state);
    press_to(state, 0.5);
    CHECK(state.way == doctest::Approx(first + 0.6));
    end_game(state);
    for (int i = 0; i < 200; ++i) press_to(state, i % 2 == 0 ? 0.1 : 2.0);
    CHECK(worn(state));
    CHECK(state.moves.size() <= most_moves + 2);
    new_strip(state);
    CHECK_FALSE(worn(state));
}

TEST_CASE("pure bending keeps what the section keeps") {
    const BenchSetup setup = setup_of({"dc01"}, BenchKind::pure);
    const BentStrip bent = bend_purely(setup, 0, {{0.1}});
    const auto point = material::bend_in_pure_moment(card_of(setup.metals[0]), 1.0, {0.1}, 41)[0];
    CHECK(1.0 / bent.radius_loaded == doctest::Approx(1.0 / (10.0 - 0.5 * point.thickness)).epsilon(1e-4));
    CHECK(bent.free / bent.loaded == doctest::Approx(point.free_curvature / point.curvature).epsilon(0.002));
    // Along an arc: the ends are where the radius says.
    const stroke::State& held = bent.recording.states[static_cast<std::size_t>(bent.held_instant())];
    CHECK(held.theta.back() - held.theta.front() == doctest::Approx(bent.loaded));
    CHECK(bent.recording.states.back().phase == stroke::Phase::free);
}

TEST_CASE("the overbend leaves what is wanted") {
    for (const BenchKind kind : {BenchKind::vee, BenchKind::pure}) {
        const BenchSetup setup = setup_of({"stainless-1.4310"}, kind);
        const Overbend found = overbend_for(setup, 0, 80.0 * degree, [] { return true; });
        CHECK(found.reason == "");
        BenchPress press(setup);
        press.bend_to(found.way);
        CHECK(press.strips()[0].free / degree == doctest::Approx(80.0).epsilon(2e-4));
        CHECK(press.strips()[0].loaded == doctest::Approx(found.loaded).epsilon(1e-4));
        CHECK(found.loaded > 82.0 * degree);
    }
    CHECK(overbend_for(setup_of({"dc01"}, BenchKind::pure), 0, 179.9 * degree, [] { return true; }).reason !=
          "");
}

TEST_CASE("what cannot be made is told where it stands") {
    BenchSetup setup = setup_of({"dc01"});
    CHECK_FALSE(trouble_of(setup));
    setup.nose_radius = 6.0;
    REQUIRE(trouble_of(setup));
    CHECK(trouble_of(setup)->at == BenchSlider::nose);
    setup.nose_radius = 1.0, setup.thickness = 4.0;
    REQUIRE(trouble_of(setup));
    CHECK(trouble_of(setup)->at == BenchSlider::opening);
    setup.kind = BenchKind::pure;
    CHECK_FALSE(trouble_of(setup));
}

TEST_CASE("guesses as people type them") {
    GuessGame game;
    CHECK(add_guess(game, "88.5"));
    CHECK(add_guess(game, "Ann: 91,25"));
    CHECK(add_guess(game, "The back row 3 90"));
    for (const char* wrong : {"", "Ann", "-5", "200", "1.2.3", "."}) {
        CAPTURE(wrong);
        CHECK_FALSE(add_guess(game, wrong));
    }
    REQUIRE(game.guesses.size() == 3);
    CHECK(game.guesses[1].who == "Ann");
    CHECK(game.guesses[1].angle == doctest::Approx(91.25));
    CHECK(game.guesses[2].who == "The back row 3");
    const auto all = judged(game, 90.5);
    CHECK(all[0].guess.angle == 90.0);
    CHECK(all[1].off == doctest::Approx(0.75));
    CHECK(all[2].off == doctest::Approx(-2.0));
    std::mt19937 chance(7);
    for (int i = 0; i < 50; ++i) {
        const Round round = next_round(chance, {"dc01", "dc04", "dp600"}, "dc04");
        CHECK(round.card != "dc04");
        CHECK(round.way > 0.3);
        CHECK(round.way < 0.9);
    }
}

TEST_CASE("the bench begins as it was left, as far as that can be") {
    BenchState state = begin_bench({});
    BenchSetup first;
    first.metals = {metal_of("dc01")};
    CHECK(same(state.setup, first));
    CHECK(state.way > 0.0);
    take_kind(state, BenchKind::pure);
    add_metal(state, known_cards());
    chosen(state).yield = 900.0;
    rename(chosen(state));
    state.setup.thickness = 2.0, state.wanted = 45.0;
    press_to(state, 0.3 * deepest(state.setup));
    RememberedBench left;
    remember(state, left);
    const BenchState again = begin_bench(left);
    CHECK(same(again.setup, state.setup));
    CHECK(again.way == doctest::Approx(state.way).epsilon(1e-12));
    CHECK(again.wanted == 45.0);

    left.thickness = std::nan(""), left.opening = 1e9, left.friction = -1.0, left.way = 7.0;
    left.metals = {{"gone", 2e5, 200.0, 100.0}, {"dc01", 1.0, 1e9, 60.0}};
    left.metals.resize(9, {"dc01", 2e5, 200.0, 100.0});
    const BenchState mended = begin_bench(left);
    const BenchSetup fresh;
    CHECK(mended.setup.thickness == fresh.thickness);
    CHECK(mended.setup.opening == fresh.opening);
    CHECK(mended.setup.friction == fresh.friction);
    CHECK(mended.setup.metals.size() == static_cast<std::size_t>(most_metals));
    CHECK(mended.setup.metals[0].yield == metal_of("dc01").yield);
    CHECK(mended.setup.metals[0].hardening == 60.0);
    CHECK(mended.way <= deepest(mended.setup));
    CHECK_FALSE(trouble_of(mended.setup));

    // Each value in its range, but not together: the tools have no room.
    left = {};
    left.thickness = 4.0, left.opening = 3.0, left.nose_radius = 12.0, left.way = 0.5;
    left.metals = {{"dc04", 2e5, 200.0, 100.0}};
    const BenchState possible = begin_bench(left);
    CHECK_FALSE(trouble_of(possible.setup));
    CHECK(possible.setup.metals[0].card == "dc04");
}
