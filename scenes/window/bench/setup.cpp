#include "scenes/window/bench/setup.h"

#include <algorithm>
#include <cmath>

#include "scenes/files/case/read_card.h"
#include "sim/errors.h"
#include "sim/material/flow_curve.h"
#include "sim/units.h"
#include "sim/words.h"

namespace overbend::window {

namespace {

constexpr double early = 0.002, late = 0.1;  // plastic strains between which hardening is shown
constexpr double sharpest_pure = 0.25;       // curvature times thickness: an inner radius of 3.5 thicknesses

double flow_at(const material::Card& c, double p) {
    return material::flow_point(c.hardening, c.youngs_modulus, p).stress;
}

// The law of the card's own form that goes through both stresses.
struct Through {
    double yield, rise;
    double modulus;  // of the card

    material::Hardening power(double e0) const {
        const double n = std::log1p(rise / yield) / std::log((e0 + late) / (e0 + early));
        return material::Swift{yield / std::pow(e0 + early, n), e0, std::max(n, 1e-6)};
    }
    material::Hardening operator()(const material::Swift& s) const { return power(s.e0); }
    material::Hardening operator()(const material::Hollomon& h) const {
        return power(std::pow(h.K / modulus, 1.0 / (1.0 - h.n)));
    }
    material::Hardening operator()(const material::Voce& v) const {
        const double at_early = -std::expm1(-v.b * early), at_late = -std::expm1(-v.b * late);
        const double Q = rise / (at_late - at_early);
        return material::Voce{std::max(yield - Q * at_early, 0.05 * yield), Q, v.b};
    }
    material::Hardening operator()(const material::Linear&) const {
        const double H = rise / (late - early);
        return material::Linear{std::max(yield - H * early, 0.05 * yield), H};
    }
    material::Hardening operator()(const material::Table& t) const {
        const double was = material::flow_point(t, modulus, early).stress;
        const double rose = material::flow_point(t, modulus, late).stress - was;
        material::Table table = t;
        for (double& s : table.stress)
            s = std::max(0.05 * yield, yield + (s - was) * (rose > 0.0 ? rise / rose : 0.0));
        return table;
    }
};

bool differs(double a, double b) {
    return std::abs(a - b) > 1e-6 * std::max(1.0, std::abs(b));
}

bool same(const BenchMetal& a, const BenchMetal& b) {
    return a.card == b.card && a.name == b.name && a.modulus == b.modulus && a.yield == b.yield &&
           a.hardening == b.hardening;
}

}  // namespace

bool same(const BenchSetup& a, const BenchSetup& b) {
    return a.kind == b.kind && a.thickness == b.thickness && a.nose_radius == b.nose_radius &&
           a.opening == b.opening && a.friction == b.friction &&
           std::equal(a.metals.begin(), a.metals.end(), b.metals.begin(), b.metals.end(),
                      [](const BenchMetal& x, const BenchMetal& y) { return same(x, y); });
}

double yield_of(const material::Card& card) {
    return flow_at(card, early);
}

double hardening_of(const material::Card& card) {
    return flow_at(card, late) - flow_at(card, early);
}

BenchMetal metal_of(const std::string& name) {
    const material::Card card = files::read_card(name, ".");
    return {name, name, card.youngs_modulus, yield_of(card), hardening_of(card)};
}

void rename(BenchMetal& metal) {
    const BenchMetal own = metal_of(metal.card);
    const bool changed = differs(metal.modulus, own.modulus) || differs(metal.yield, own.yield) ||
                         differs(metal.hardening, own.hardening);
    metal.name = metal.card + (changed ? ", changed" : "");
}

material::Card card_of(const BenchMetal& metal) {
    material::Card card = files::read_card(metal.card, ".");
    if (differs(metal.yield, yield_of(card)) || differs(metal.hardening, hardening_of(card)))
        card.hardening =
            std::visit(Through{metal.yield, metal.hardening, card.youngs_modulus}, card.hardening);
    if (differs(metal.modulus, card.youngs_modulus)) {
        // The yield strain of a power law would move with it, and the flow curve with that.
        if (std::holds_alternative<material::Hollomon>(card.hardening))
            card.hardening = Through{metal.yield, metal.hardening,
                                     card.youngs_modulus}(std::get<material::Hollomon>(card.hardening));
        if (card.modulus_drop) card.modulus_drop->to *= metal.modulus / card.youngs_modulus;
        card.youngs_modulus = metal.modulus;
    }
    return card;
}

job::VeeBend vee_of(const BenchSetup& s, int metal) {
    job::VeeBend bend;
    bend.material = card_of(s.metals[static_cast<std::size_t>(metal)]);
    bend.thickness = s.thickness;
    bend.friction = s.friction;
    bend.die_opening = s.opening;
    bend.nose_radius = s.nose_radius;
    bend.shoulder_radius = std::min(1.0, 0.125 * s.opening);
    bend.layers = 11;
    bend.elements_per_thickness = 10.0;
    return bend;
}

double deepest(const BenchSetup& s) {
    return s.kind == BenchKind::pure ? sharpest_pure / s.thickness : 0.45 * s.opening + 0.3 * s.thickness;
}

double pure_length(const BenchSetup& s) {
    return pi / sharpest_pure * s.thickness;
}

std::optional<BenchTrouble> trouble_of(const BenchSetup& s) {
    for (const BenchMetal& m : s.metals) {
        try {
            material::check(card_of(m));
        } catch (const OutOfRange& error) {
            return BenchTrouble{BenchSlider::hardening, error.what()};
        }
    }
    if (s.kind == BenchKind::pure) return {};
    const double shoulder = std::min(1.0, 0.125 * s.opening);
    const double room = 0.5 * s.opening - shoulder - s.thickness;
    if (room < 0.2 * s.thickness)
        return BenchTrouble{
            BenchSlider::opening,
            words("A strip of %.2f mm does not fit a die opening of %.1f mm; use at least %.1f mm.",
                  s.thickness, s.opening, 3.2 * s.thickness)};
    if (s.nose_radius > room)
        return BenchTrouble{BenchSlider::nose,
                            words("The nose radius is too large for the die opening; use at most %.2f mm.",
                                  std::floor(100.0 * room) / 100.0)};
    try {
        for (std::size_t i = 0; i < s.metals.size(); ++i) job::vee_stroke(vee_of(s, static_cast<int>(i)));
    } catch (const OutOfRange& error) {
        return BenchTrouble{BenchSlider::nose, error.what()};
    }
    return {};
}

}  // namespace overbend::window
