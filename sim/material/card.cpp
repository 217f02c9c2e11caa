#include "sim/material/card.h"

#include <cmath>
#include <cstddef>
#include <cstdio>

#include "sim/errors.h"

namespace overbend::material {

namespace {

std::string written(double value) {
    char text[40];
    std::snprintf(text, sizeof text, "%.6g", value);
    return text;
}

// All are written so that a NaN fails.
void demand(bool holds, const char* name, double value, const char* right) {
    if (!holds) throw OutOfRange(name, written(value) + " cannot be", right);
}

void demand_positive(double value, const char* name, const char* unit) {
    const bool holds = value > 0.0 && std::isfinite(value);
    if (!holds)
        throw OutOfRange(name, written(value) + " cannot be", std::string("give a number above 0") + unit);
}

void demand_not_negative(double value, const char* name, const char* unit) {
    const bool holds = value >= 0.0 && std::isfinite(value);
    if (!holds) throw OutOfRange(name, written(value) + " cannot be", std::string("give 0 or more") + unit);
}

void check_exponent(double n) {
    demand(n > 0.0 && n < 1.0, "hardening exponent n", n, "give a number above 0 and below 1");
}

void check_law(const Swift& law) {
    demand_positive(law.K, "K", " (MPa)");
    demand_positive(law.e0, "pre-strain e0", "");
    check_exponent(law.n);
}

void check_law(const Hollomon& law) {
    demand_positive(law.K, "K", " (MPa)");
    check_exponent(law.n);
}

void check_law(const Voce& law) {
    demand_positive(law.Y, "yield stress Y", " (MPa)");
    demand_not_negative(law.Q, "Q", " (MPa)");
    demand_positive(law.b, "rate b", "");
}

void check_law(const Linear& law) {
    demand_positive(law.Y, "yield stress Y", " (MPa)");
    demand_not_negative(law.H, "hardening H", " (MPa)");
}

void check_law(const Table& law) {
    if (law.p.empty() || law.p.size() != law.stress.size()) {
        throw OutOfRange("table",
                         std::to_string(law.p.size()) + " plastic strains and " +
                             std::to_string(law.stress.size()) + " stresses",
                         "give the same number of both, at least one");
    }
    demand(law.p.front() == 0.0, "first plastic strain", law.p.front(),
           "give 0: the first stress is at yield");
    for (std::size_t i = 0; i < law.p.size(); ++i) {
        demand_positive(law.stress[i], "stress", " (MPa)");
        if (i == 0) continue;
        demand(law.p[i] > law.p[i - 1] && std::isfinite(law.p[i]), "plastic strain", law.p[i],
               "each must be greater than the one before");
        demand(law.stress[i] >= law.stress[i - 1], "stress", law.stress[i],
               "none may be below the one before (softening is not supported)");
    }
}

struct FirstYield {
    double youngs_modulus;
    double operator()(const Swift& law) const { return law.K * std::pow(law.e0, law.n); }
    double operator()(const Hollomon& law) const {
        return youngs_modulus * std::pow(law.K / youngs_modulus, 1.0 / (1.0 - law.n));
    }
    double operator()(const Voce& law) const { return law.Y; }
    double operator()(const Linear& law) const { return law.Y; }
    double operator()(const Table& law) const { return law.stress.front(); }
};

}  // namespace

const std::vector<std::string>& metal_words() {
    static const std::vector<std::string> words = {"steel",
                                                   "stainless-annealed",
                                                   "stainless-hard",
                                                   "stainless-1.4310",
                                                   "brass-soft",
                                                   "brass-hard",
                                                   "aluminium-1100-o",
                                                   "aluminium-1100-h12",
                                                   "aluminium-1100-h14",
                                                   "aluminium-1100-h16",
                                                   "aluminium-1100-h18",
                                                   "aluminium-5052-o",
                                                   "aluminium-5052-h32",
                                                   "aluminium-5052-h34",
                                                   "aluminium-5052-h36",
                                                   "aluminium-5052-h38",
                                                   "aluminium-6061-o",
                                                   "aluminium-6061-t4",
                                                   "aluminium-6061-t6"};
    return words;
}

Card with_strength(Card card, double factor) {
    struct Scaled {
        double factor;
        void operator()(Swift& law) const { law.K *= factor; }
        void operator()(Hollomon& law) const { law.K *= factor; }
        void operator()(Voce& law) const { law.Y *= factor, law.Q *= factor; }
        void operator()(Linear& law) const { law.Y *= factor, law.H *= factor; }
        void operator()(Table& law) const {
            for (double& stress : law.stress) stress *= factor;
        }
    };
    std::visit(Scaled{factor}, card.hardening);
    for (Backstress& b : card.backstress) b.C *= factor;
    card.tensile_strength *= factor;
    return card;
}

void check(const Card& card) {
    demand_positive(card.youngs_modulus, "Young's modulus", " (MPa)");
    demand(card.poisson >= 0.0 && card.poisson < 0.5, "Poisson's ratio", card.poisson,
           "give 0 or more, below 0.5");
    demand_not_negative(card.density, "density", " (kg/m3)");
    std::visit([](const auto& law) { check_law(law); }, card.hardening);
    if (card.backstress.size() > most_backstresses)
        throw OutOfRange("back stresses", std::to_string(card.backstress.size()) + " are given",
                         "give two at most");
    for (const Backstress& b : card.backstress) {
        demand_not_negative(b.C, "back stress C", " (MPa)");
        demand_not_negative(b.gamma, "back stress gamma", "");
    }
    if (card.modulus_drop) {
        demand(card.modulus_drop->to > 0.0 && card.modulus_drop->to <= card.youngs_modulus,
               "modulus that is left", card.modulus_drop->to,
               "give a number above 0, at most Young's modulus (MPa)");
        demand_positive(card.modulus_drop->rate, "rate of the modulus drop", "");
    }
    demand(card.r_value >= 0.1 && card.r_value <= 10.0, "r-value", card.r_value, "give 0.1 to 10");
    demand_not_negative(card.tensile_strength, "tensile strength", " (MPa)");
    demand_not_negative(card.elongation, "elongation", "");
    demand(card.strength_range >= 0.0 && card.strength_range <= 0.5, "strength range", card.strength_range,
           "give 0 to 0.5");
    demand(card.reduction_of_area >= 0.0 && card.reduction_of_area < 1.0, "reduction of area",
           card.reduction_of_area, "give 0 or more, below 1");
    demand_not_negative(card.price, "price", " (per kg)");
    demand_not_negative(card.cutting_rate, "cutting rate", " (mm2/s)");

    // No metal strip stretches a tenth before it yields: the units of one of the two must be wrong.
    const double yield = std::visit(FirstYield{card.youngs_modulus}, card.hardening);
    demand(yield > 0.0 && yield < 0.1 * card.youngs_modulus, "first yield stress", yield,
           "give a law that begins below a tenth of Young's modulus (MPa)");
}

}  // namespace overbend::material
