// Laws fitted to curves of themselves, and compared.

#include <doctest/doctest.h>

#include <cmath>

#include "sim/material/flow_curve.h"
#include "sim/tensile/coil.h"
#include "tests/tensile/synthetic.h"

using namespace overbend;
using namespace overbend::tensile;
using overbend::tests::synthetic_record;
using overbend::tests::SyntheticTest;

namespace {

Coil coil_of(const SyntheticTest& t) {
    return read_coil({prepare(synthetic_record(t))}, Nominal{t.modulus, "nominal", ""});
}

double differs(const LawFit& fit, std::size_t number, double value) {
    return std::abs(fit.numbers.at(number).value / value - 1.0);
}

}  // namespace

TEST_CASE("laws: derivatives of the models by finite differences") {
    const std::pair<Law, std::vector<double>> laws[] = {{Law::swift, {520.0, 0.01, 0.2}},
                                                        {Law::hollomon, {540.0, 0.16}},
                                                        {Law::voce, {200.0, 150.0, 12.0}},
                                                        {Law::linear, {250.0, 900.0}}};
    for (const auto& [law, values] : laws) {
        CAPTURE(law_word(law));
        const Eigen::VectorXd free =
            Eigen::VectorXd::Map(values.data(), Eigen::Index(values.size())).array().log();
        for (const double p : {0.0, 0.003, 0.05, 0.3}) {
            const ModelPoint at = model_point(law, free, 208e3, p);
            for (Eigen::Index i = 0; i < free.size(); ++i) {
                Eigen::VectorXd more = free, less = free;
                more[i] += 1e-5, less[i] -= 1e-5;
                const double slope =
                    (model_point(law, more, 208e3, p).stress - model_point(law, less, 208e3, p).stress) /
                    2e-5;
                CHECK(std::abs(at.slopes[i] - slope) < 1e-4 * at.stress);
            }
            // As the program's own flow curve has it.
            CHECK(std::abs(at.stress - material::flow_point(hardening_of(law, free), 208e3, p).stress) <
                  1e-9 * at.stress);
        }
    }
}

TEST_CASE("laws: a curve of a law without scatter gives back its numbers") {
    SyntheticTest t;
    t.law = material::Swift{520.0, 0.01, 0.2};
    Coil coil = coil_of(t);
    CHECK(differs(coil.fits[0], 0, 520.0) < 2e-3);
    CHECK(differs(coil.fits[0], 1, 0.01) < 2e-2);
    CHECK(differs(coil.fits[0], 2, 0.2) < 5e-3);
    CHECK(best_of(coil.fits).law == Law::swift);

    t.law = material::Hollomon{534.0, 0.16};
    coil = coil_of(t);
    CHECK(differs(coil.fits[1], 0, 534.0) < 3e-3);
    CHECK(differs(coil.fits[1], 1, 0.16) < 1e-2);
    CHECK(best_of(coil.fits).law == Law::hollomon);

    t.law = material::Voce{200.0, 150.0, 12.0};
    coil = coil_of(t);
    CHECK(differs(coil.fits[2], 0, 200.0) < 3e-3);
    CHECK(differs(coil.fits[2], 1, 150.0) < 5e-3);
    CHECK(differs(coil.fits[2], 2, 12.0) < 1e-2);
    CHECK(best_of(coil.fits).law == Law::voce);

    t.law = material::Linear{250.0, 600.0};
    coil = coil_of(t);
    CHECK(differs(coil.fits[3], 0, 250.0) < 2e-3);
    CHECK(differs(coil.fits[3], 1, 600.0) < 1e-2);
    CHECK(best_of(coil.fits).law == Law::linear);
}

TEST_CASE("laws: a mixture of Swift and Voce is found between both, and kept as a table that rises") {
    material::Table table;
    for (double p = 0.0; p < 1.0; p += 1e-3) {
        table.p.push_back(p);
        table.stress.push_back(0.6 * 560.0 * std::pow(0.005 + p, 0.22) +
                               0.4 * (200.0 + 220.0 * (1.0 - std::exp(-14.0 * p))));
    }
    SyntheticTest t;
    t.law = table;
    t.scatter = 0.2;
    const Coil coil = coil_of(t);
    const LawFit& mix = coil.fits[4];
    CHECK(mix.residual <= coil.fits[0].residual + 1e-9);
    CHECK(mix.residual <= coil.fits[2].residual + 1e-9);
    CHECK(mix.numbers[0].value > 0.2);
    CHECK(mix.numbers[0].value < 0.9);
    const auto& written = std::get<material::Table>(mix.hardening);
    CHECK(written.p.front() == 0.0);
    CHECK(std::is_sorted(written.stress.begin(), written.stress.end()));
    // Beyond the record it lies between its parts.
    const double at = stress_of(mix, 208e3, 0.8), a = stress_of(coil.fits[0], 208e3, 0.8),
                 b = stress_of(coil.fits[2], 208e3, 0.8);
    CHECK(at < std::max(a, b));
    CHECK(at > std::min(a, b));
}

TEST_CASE("laws: the table keeps a yield point, rises and ends with the record") {
    SyntheticTest t;
    t.law = material::Swift{700.0, 0.002, 0.19};
    t.upper_yield = 345.0;
    t.yield_elongation = 0.02;
    t.scatter = 0.5;
    const Coil coil = coil_of(t);
    const auto& table = std::get<material::Table>(coil.fits[5].hardening);
    CHECK(table.p.front() == 0.0);
    CHECK(table.stress[0] == table.stress[1]);
    CHECK(std::is_sorted(table.p.begin(), table.p.end()));
    CHECK(std::is_sorted(table.stress.begin(), table.stress.end()));
    CHECK(std::abs(table.p.back() - coil.tests[0].curve.to) < 0.02);
    CHECK(coil.fits[5].residual < 2.0);
}

TEST_CASE("laws: the same record gives the same numbers twice") {
    SyntheticTest t;
    t.scatter = 1.0;
    const Coil a = coil_of(t), b = coil_of(t);
    for (std::size_t i = 0; i < a.fits.size(); ++i) {
        CHECK(a.fits[i].residual == b.fits[i].residual);
        for (std::size_t n = 0; n < a.fits[i].numbers.size(); ++n)
            CHECK(a.fits[i].numbers[n].value == b.fits[i].numbers[n].value);
    }
}
