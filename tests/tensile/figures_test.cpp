// Figures of synthetic records against those of the law that they were made of.

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "sim/tensile/coil.h"
#include "tests/tensile/synthetic.h"

using namespace overbend;
using namespace overbend::tensile;
using overbend::tests::proof_of;
using overbend::tests::synthetic_record;
using overbend::tests::SyntheticTest;
using overbend::tests::uniform_of;

namespace {

const Nominal steel{208e3, "dc01", ""};

Coil coil_of(const SyntheticTest& t, const std::optional<Nominal>& nominal = steel) {
    return read_coil({prepare(synthetic_record(t))}, nominal);
}

bool says(const std::vector<std::string>& sentences, const std::string& part) {
    for (const std::string& s : sentences)
        if (s.find(part) != std::string::npos) return true;
    return false;
}

}  // namespace

TEST_CASE("figures: without scatter they are the law's own") {
    const SyntheticTest t;
    const Coil coil = coil_of(t);
    CHECK(coil.modulus_measured);
    CHECK(std::abs(coil.modulus.value / t.modulus - 1.0) < 1e-3);
    CHECK(std::abs(coil.proof.value / proof_of(t) - 1.0) < 2e-3);
    CHECK(std::abs(coil.strength.value / uniform_of(t).strength - 1.0) < 1e-4);
    CHECK(std::abs(coil.uniform.value - uniform_of(t).elongation) < 0.006);
    REQUIRE(coil.elongation);
    CHECK(coil.elongation->value > coil.uniform.value);
    CHECK_FALSE(coil.upper_yield);
}

TEST_CASE("figures: scatter moves them by no more than their off, nine times in ten") {
    int proof = 0, modulus = 0;
    constexpr int seeds = 100;
    for (int seed = 1; seed <= seeds; ++seed) {
        SyntheticTest t;
        t.scatter = 1.0;
        t.seed = static_cast<std::uint32_t>(seed);
        const Coil coil = coil_of(t);
        if (std::abs(coil.proof.value - proof_of(t)) <= coil.proof.off) ++proof;
        const Figure& slope = coil.tests[0].figures.slope;
        if (std::abs(slope.value - t.modulus) <= slope.off) ++modulus;
        CHECK(std::abs(coil.strength.value / uniform_of(t).strength - 1.0) < 0.01);
    }
    MESSAGE("within: proof stress ", proof, ", slope ", modulus, " of ", seeds);
    CHECK(proof >= 90);
    CHECK(modulus >= 90);
}

TEST_CASE("figures: the machine's own stretch is seen, said and taken off") {
    SyntheticTest t;
    t.machine_slope = 60e3;
    t.scatter = 0.5;
    const Coil coil = coil_of(t);
    CHECK_FALSE(coil.modulus_measured);
    CHECK(coil.modulus.value == steel.modulus);
    CHECK(says(coil.tests[0].modulus.said, "the machine's own stretch"));
    CHECK(std::abs(coil.proof.value / proof_of(t) - 1.0) < 0.01);
    CHECK(std::abs(coil.uniform.value - uniform_of(t).elongation) < std::max(0.01, coil.uniform.off));
    // Without a nominal modulus 60 GPa is that of no strip metal.
    CHECK_THROWS_AS(coil_of(t, std::nullopt), BadRecord);
}

TEST_CASE("figures: a modulus is that of a family where nobody names one") {
    SyntheticTest t;
    t.modulus = 70e3;
    t.law = material::Voce{250.0, 80.0, 12.0};
    t.scatter = 0.3;
    const Coil coil = coil_of(t, std::nullopt);
    CHECK(coil.nominal.name == "aluminium");
    CHECK(coil.modulus_measured);
}

TEST_CASE("figures: slack of the machine does not move the origin") {
    SyntheticTest t;
    t.slack = 0.004;
    t.scatter = 0.3;
    const Coil coil = coil_of(t);
    CHECK(std::abs(coil.proof.value / proof_of(t) - 1.0) < 0.01);
    CHECK(std::abs(coil.tests[0].figures.uniform_total.value - uniform_of(t).total) <
          std::max(0.006, coil.uniform.off));
}

TEST_CASE("figures: a yield point has its upper and lower yield and its elongation") {
    for (const double scatter : {0.0, 0.5, 1.0}) {
        CAPTURE(scatter);
        SyntheticTest t;
        t.law = material::Swift{700.0, 0.002, 0.19};
        t.upper_yield = 345.0;
        t.yield_elongation = 0.02;
        t.scatter = scatter;
        t.plastic_points = 500;
        const Coil coil = coil_of(t);
        REQUIRE(coil.upper_yield);
        const double level = material::Swift{700.0, 0.002, 0.19}.K * std::pow(0.022, 0.19);
        CHECK(std::abs(coil.upper_yield->value - 345.0) < 3.0);
        CHECK(std::abs(coil.lower_yield->value / (level / 1.012) - 1.0) < 0.02);
        CHECK(std::abs(coil.yield_elongation->value - 0.02) < 0.003);
    }
}

TEST_CASE("figures: no yield point where there is none") {
    for (std::uint32_t seed = 1; seed <= 100; ++seed) {
        SyntheticTest t;
        t.scatter = 1.5;
        t.seed = seed;
        CHECK_FALSE(coil_of(t).upper_yield);
    }
}

TEST_CASE("figures: the r-value of a record with widths") {
    for (const double r : {0.7, 1.0, 1.8}) {
        SyntheticTest t;
        t.r_value = r;
        const Coil coil = coil_of(t);
        REQUIRE(coil.r_value);
        CHECK(std::abs(coil.r_value->value - r) < 0.03);
    }
    CHECK_FALSE(coil_of(SyntheticTest()).r_value);
}

TEST_CASE("figures: a record that ends before the greatest load says what it reached") {
    SyntheticTest t;
    t.breaks = false;
    const Coil coil = coil_of(t);
    CHECK_FALSE(coil.tests[0].figures.neck_seen);
    CHECK_FALSE(coil.elongation);
}

TEST_CASE("figures: tests of one coil are read together, with what they differ") {
    std::vector<Prepared> tests;
    for (const double K : {510.0, 520.0, 530.0}) {
        SyntheticTest t;
        t.law = material::Swift{K, 0.01, 0.2};
        t.scatter = 0.3;
        tests.push_back(prepare(synthetic_record(t)));
    }
    const Coil coil = read_coil(tests, steel);
    CHECK(std::abs(coil.strength_differs - 2.0 * 10.0 / 520.0) < 0.002);
    const auto& swift = std::get<material::Swift>(coil.fits[0].hardening);
    CHECK(std::abs(swift.K - 520.0) < 3.0);
    CHECK(coil.fits[0].residual < 0.6);  // the tests' difference in level is none of the law's
    CHECK(coil.fits[0].numbers[0].high - coil.fits[0].numbers[0].low > 15.0);
}
