// Whatever the record: it is refused with a sentence, or every figure of it is finite and in order.

#include <doctest/doctest.h>

#include <cmath>

#include "sim/tensile/coil.h"
#include "tests/tensile/synthetic.h"

using namespace overbend;
using namespace overbend::tensile;
using overbend::tests::synthetic_record;
using overbend::tests::SyntheticTest;

namespace {

// The same numbers everywhere, from 0 to below 1.
class Numbers {
  public:
    explicit Numbers(std::uint32_t seed) : state_(seed) {}
    double next() {
        state_ = state_ * 1664525u + 1013904223u;
        return static_cast<double>(state_ >> 8) / 16777216.0;
    }
    double between(double low, double high) { return low + (high - low) * next(); }
    bool chance(double of) { return next() < of; }

  private:
    std::uint32_t state_;
};

SyntheticTest any_test(Numbers& n, std::uint32_t seed) {
    SyntheticTest t;
    t.seed = seed;
    t.modulus = n.chance(0.5) ? 208e3 : 70e3;
    const double yield = n.between(60.0, 900.0);
    if (n.chance(0.4))
        t.law = material::Swift{yield / std::pow(0.01, 0.2), 0.01, 0.2};
    else if (n.chance(0.5))
        t.law = material::Voce{yield, yield * n.between(0.0, 1.0), n.between(2.0, 60.0)};
    else
        t.law = material::Linear{yield, n.between(0.0, 2.0 * yield)};
    t.scatter = n.chance(0.3) ? 0.0 : yield * n.between(0.0, 0.02);
    t.strain_scatter = n.chance(0.7) ? 0.0 : n.between(0.0, 3e-4);
    t.slack = n.chance(0.7) ? 0.0 : n.between(0.0, 0.02);
    if (n.chance(0.3)) t.machine_slope = n.between(10e3, t.modulus);
    if (n.chance(0.2)) t.upper_yield = 1.1 * yield, t.yield_elongation = n.between(0.002, 0.03);
    if (n.chance(0.3)) t.r_value = n.between(0.3, 3.0);
    t.elastic_points = static_cast<int>(n.between(0.0, 120.0));
    t.plastic_points = static_cast<int>(n.between(4.0, 400.0));
    t.breaks = n.chance(0.7);
    return t;
}

// Points out of place, doubled, gone.
void spoil(Numbers& n, Record& r) {
    for (int i = 0; i < 6 && r.size() > 10; ++i) {
        const std::size_t at = static_cast<std::size_t>(n.between(0.0, static_cast<double>(r.size() - 1)));
        if (n.chance(0.25)) r.stress[at] *= n.between(-2.0, 3.0);
        if (n.chance(0.25)) r.strain[at] += n.between(-0.05, 0.05);
        if (n.chance(0.25)) r.strain[at + 1] = r.strain[at], r.stress[at + 1] = r.stress[at];
        if (n.chance(0.1))
            for (std::size_t k = at; k < r.size(); ++k) r.stress[k] = r.stress[at];
    }
}

void check_figure(const Figure& f) {
    CHECK(std::isfinite(f.value));
    CHECK(std::isfinite(f.off));
    CHECK(f.off >= 0.0);
}

void check_coil(const Coil& c) {
    for (const Figure& f : {c.modulus, c.proof, c.strength, c.uniform}) check_figure(f);
    for (const auto& f : {c.upper_yield, c.lower_yield, c.yield_elongation, c.elongation, c.r_value})
        if (f) check_figure(*f);
    for (const LawFit& f : c.fits) {
        if (f.residual >= 1e300) continue;
        CAPTURE(law_word(f.law));
        for (const double p : {0.0, 0.01, 0.3, 1.5}) {
            CHECK(std::isfinite(stress_of(f, c.modulus.value, p)));
            CHECK(stress_of(f, c.modulus.value, p) > 0.0);
        }
        for (const FittedNumber& number : f.numbers) {
            CHECK(number.low <= number.value);
            CHECK(number.value <= number.high);
        }
        material::Card card;
        card.youngs_modulus = c.modulus.value, card.density = 7850.0;
        card.hardening = f.hardening;
        CHECK_NOTHROW(material::check(card));
    }
    CHECK(std::isfinite(best_of(c.fits).residual));
}

}  // namespace

TEST_CASE("any record: finite figures and a card, or a sentence") {
    int refused = 0;
    constexpr int rounds = 400;
    for (std::uint32_t seed = 1; seed <= rounds; ++seed) {
        CAPTURE(seed);
        Numbers n(seed * 7919u);
        const SyntheticTest t = any_test(n, seed);
        Record r = synthetic_record(t);
        if (n.chance(0.5)) spoil(n, r);
        try {
            check_coil(read_coil({prepare(r)}, n.chance(0.5)
                                                   ? std::optional<Nominal>({t.modulus, "nominal", ""})
                                                   : std::nullopt));
        } catch (const BadRecord& bad) {
            CHECK_FALSE(bad.wrong.empty());
            CHECK_FALSE(bad.right.empty());
            ++refused;
        }
    }
    MESSAGE(refused, " of ", rounds, " refused");
    CHECK(refused < rounds * 3 / 4);
}
