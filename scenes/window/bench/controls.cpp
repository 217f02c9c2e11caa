#include "scenes/window/bench/controls.h"

#include <imgui.h>

#include <algorithm>

#include "scenes/window/shared/flow.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::window {

using ui::chosen_if;
using ui::enabled_if;
using ui::Ui;
using K = sf::Keyboard;

namespace {

struct BenchPanel {
    Ui& ui;
    BenchState& state;
    const std::vector<std::string>& cards;
    const BenchTold& told;

    void trouble(BenchSlider at) {
        if (told.trouble && told.trouble->at == at) ui.words(told.trouble->words, Ui::Weight::alarm);
    }

    // How far: mm, or 1/mm in pure bending.
    void way() {
        const double limit = deepest(state.setup);
        const bool pure = state.setup.kind == BenchKind::pure;
        const bool freed = state.moves.back().let_go;
        Flow flow(ui);
        if (flow.button("Release", {K::L},
                        pure ? "The moment falls to zero and the strip springs back"
                             : "The punch goes up and the strip springs back",
                        enabled_if(!freed && state.game.stage != GuessStage::guessing)))
            release(state);
        if (flow.button("Press again", {K::P}, "Presses the bent strip as far as before",
                        enabled_if(state.way != state.depth || freed)))
            press_again(state);
        if (flow.button("New strip", {K::B}, "A flat one, pressed once as far as the last one"))
            new_strip(state);
        if (flow.button("Reset", {K::R}, "Back to the first tools, values and travel")) reset(state);
        double value = state.way;
        if (ui.slider(pure ? "Curvature" : "Travel", value, pure ? -limit : 0.0, limit,
                      pure ? "%.4f /mm" : "%.3f mm",
                      pure ? "Or drag in the picture. Less curvature bends the strip back"
                           : "Of the punch, from the flat strip. Up: the strip springs back and stays bent"))
            press_to(state, value);
        const double fine = limit / 400.0, coarse = limit / 20.0;
        const auto step = [&](const char* words, K::Key code, double by) {
            if (ui.key(words, {code})) press_to(state, state.way + by);
        };
        step("Down, a little", K::Down, fine);
        step("Up, a little", K::Up, -fine);
        step("Down", K::PageDown, coarse);
        step("Up", K::PageUp, -coarse);
        if (worn(state))
            ui.words("This strip has been pressed as often as can be followed; take a new strip.",
                     Ui::Weight::alarm);
        if (told.shown && !told.trouble && !told.shown->held_by.empty())
            ui.words(words("Held at %.3f: ", told.shown->limit) + told.shown->held_by, Ui::Weight::alarm);
        else if (told.shown && !told.trouble && state.way > told.shown->limit + 1e-9 &&
                 !told.shown->limited_by.empty())
            ui.words(words("Held at %.3f: ", told.shown->limit) + told.shown->limited_by, Ui::Weight::alarm);
        if (!told.error.empty()) ui.words(told.error, Ui::Weight::alarm);
    }

    void metals() {
        ui.words("Material", Ui::Weight::heading);
        Flow flow(ui);
        const int count = static_cast<int>(state.setup.metals.size());
        for (int i = 0; count > 1 && i < count; ++i)
            if (flow.toggle(words("Strip %d", i + 1), chosen_if(i == state.metal),
                            {static_cast<K::Key>(K::Num1 + i)}, "The sliders show the values of this strip"))
                state.metal = i;
        int card =
            static_cast<int>(std::find(cards.begin(), cards.end(), chosen(state).card) - cards.begin());
        if (ui.choice("Card", card, cards, "The sliders start from the values of this card"))
            take_card(state, cards[static_cast<std::size_t>(card)]);
        Flow row(ui);
        if (row.button("Next material", {K::M}, "The next card of the list"))
            take_card(state, cards[static_cast<std::size_t>(card + 1) % cards.size()]);
        if (row.button("Add strip", {K::A}, "Pressed by the same punch; at most four strips",
                       enabled_if(count < most_metals && state.game.stage == GuessStage::off)))
            add_metal(state, cards);
        if (row.button("Remove strip", {K::Delete}, "Removes the strip whose values are shown",
                       enabled_if(count > 1)))
            remove_metal(state);
        figures();
    }

    void figures() {
        BenchMetal& m = chosen(state);
        bool changed = false;
        double modulus = m.modulus / 1000.0;
        if (ui.slider("Modulus", modulus, 1e-3 * moduli.low, 1e-3 * moduli.high, "%.0f GPa", "Young's"))
            m.modulus = 1000.0 * modulus, changed = true;
        trouble(BenchSlider::modulus);
        changed = ui.slider("Yield", m.yield, yields.low, yields.high, "%.0f MPa",
                            "Flow stress at 0.2 per cent of plastic strain") ||
                  changed;
        trouble(BenchSlider::yield);
        changed = ui.slider("Hardening", m.hardening, hardenings.low, hardenings.high, "%.0f MPa",
                            "How much the flow stress rises from 0.2 to 10 per cent of plastic strain") ||
                  changed;
        trouble(BenchSlider::hardening);
        if (changed) rename(m);
        if (m.name != m.card && ui.button("Reset to card", {K::C})) take_card(state, m.card);
    }

    void tools() {
        const bool vee = state.setup.kind == BenchKind::vee;
        ui.words(vee ? "Strip and tools" : "Strip", Ui::Weight::heading);
        const double part = state.depth / deepest(state.setup);
        bool moved =
            ui.slider("Thickness", state.setup.thickness, thicknesses.low, thicknesses.high, "%.2f mm");
        trouble(BenchSlider::thickness);
        if (vee) {
            ui.slider("Nose radius", state.setup.nose_radius, nose_radii.low, nose_radii.high, "%.2f mm",
                      "Of the punch");
            trouble(BenchSlider::nose);
            moved = ui.slider("Opening", state.setup.opening, openings.low, openings.high, "%.1f mm",
                              "Of the die, between the centres of the shoulder radii") ||
                    moved;
            trouble(BenchSlider::opening);
            ui.slider("Friction", state.setup.friction, frictions.low, frictions.high, "%.2f");
            trouble(BenchSlider::friction);
        }
        if (moved) state.depth = part * deepest(state.setup);
    }

    void guessing() {
        ui.words("Guess the angle", Ui::Weight::heading);
        const GuessStage stage = state.game.stage;
        Flow flow(ui);
        if (flow.toggle("Guess", chosen_if(stage != GuessStage::off), {K::G},
                        "Hides the free angle until you show it")) {
            stage == GuessStage::off ? begin_game(state) : end_game(state);
            return;
        }
        if (stage == GuessStage::off) return;
        if (flow.button("Show angle", {K::S}, "Releases the strip and shows the closest guess",
                        enabled_if(stage == GuessStage::guessing)))
            show_angle(state);
        if (flow.button("New round", {K::N}, "Picks a material and a travel at random"))
            new_round(state, cards);
        ui.words(words("Round %d", state.game.round), Ui::Weight::muted);
        if (stage == GuessStage::guessing) {
            if (ui.text("Name and angle", state.typed, "For example Ann 88.5, or 88.5; then press Enter")) {
                take_guess(state);
                ImGui::SetKeyboardFocusHere(-1);  // for the next one
            }
            if (!state.typed_wrong.empty()) ui.words(state.typed_wrong, Ui::Weight::alarm);
            for (const Guess& g : state.game.guesses)
                ui.words(words("%.1f°  ", g.angle) + g.who, Ui::Weight::plain);
            return;
        }
        if (!told.shown || told.shown->readings.empty()) return;
        for (const Judged& j : judged(state.game, told.shown->readings.front().free / degree))
            ui.words(words("%.1f°, off by %+.1f°  ", j.guess.angle, j.off) + j.guess.who);
    }

    BenchAsked overbend() {
        if (state.game.stage == GuessStage::guessing) return BenchAsked::nothing;
        ui.words("Required overbend", Ui::Weight::heading);
        ui.number("Target angle", state.wanted, wanted_angles.low, wanted_angles.high, 1.0, "%.1f°",
                  "Bend angle after release");
        Flow flow(ui);
        BenchAsked asked = BenchAsked::nothing;
        if (flow.button("Calculate", {K::F}, "For the strip whose values are shown"))
            asked = BenchAsked::overbend;
        const std::optional<Overbend>& found = told.overbend;
        const bool here = found && same(found->setup, state.setup);
        if (flow.button("Press to this angle", {K::T}, "", enabled_if(here && found->reason.empty())) && here)
            press_flat(state, found->way);
        if (told.looking) ui.words("Calculating ...", Ui::Weight::muted);
        if (!here || told.looking) return asked;
        if (!found->reason.empty()) {
            ui.words(found->reason, Ui::Weight::alarm);
            return asked;
        }
        const bool pure = state.setup.kind == BenchKind::pure;
        ui.words(words("For %.1f° after release, bend to %.1f° under load:", found->wanted / degree,
                       found->loaded / degree) +
                 words(" overbend %.1f°, ", (found->loaded - found->wanted) / degree) +
                 (pure ? words("curvature %.4f /mm.", found->way) : words("travel %.3f mm.", found->way)));
        return asked;
    }
};

}  // namespace

BenchAsked draw_bench_controls(Ui& ui, BenchState& state, const std::vector<std::string>& cards,
                               const BenchTold& told) {
    BenchPanel panel{ui, state, cards, told};
    const BenchSetup before = state.setup;
    ui.words_before(0.36);
    Flow flow(ui);
    const BenchKind kind = state.setup.kind;
    if (flow.toggle("V bend", chosen_if(kind == BenchKind::vee), {K::V}, "Punch and open die"))
        take_kind(state, BenchKind::vee);
    if (flow.toggle("Pure bending", chosen_if(kind == BenchKind::pure), {K::U}, "By a pure moment"))
        take_kind(state, BenchKind::pure);
    panel.way();
    panel.metals();
    panel.tools();
    panel.guessing();
    const BenchAsked asked = panel.overbend();
    if (!same(before, state.setup)) renew_strip(state);
    if (told.rate > 0.0) ui.words(words("%.0f bends per second", told.rate), Ui::Weight::muted);
    return asked;
}

}  // namespace overbend::window
