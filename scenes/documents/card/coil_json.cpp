#include "scenes/documents/card/coil_json.h"

#include <nlohmann/json.hpp>

#include "sim/units.h"

namespace overbend::documents {

namespace {

using nlohmann::ordered_json;

ordered_json figure(const std::optional<tensile::Figure>& f, double times = 1.0) {
    if (!f) return nullptr;
    return {{"value", f->value * times}, {"off", f->off * times}};
}

ordered_json test_json(const tensile::TestResult& t, const std::string& file) {
    const tensile::Figures& f = t.figures;
    const auto yield = [&](tensile::Figure tensile::YieldPoint::*which) {
        return f.yield_point ? std::optional<tensile::Figure>((*f.yield_point).*which) : std::nullopt;
    };
    return {{"file", file},
            {"elastic_slope_MPa", figure(f.slope)},
            {"modulus_measured", t.modulus.measured},
            {"proof_stress_MPa", figure(f.proof)},
            {"upper_yield_MPa", figure(yield(&tensile::YieldPoint::upper))},
            {"lower_yield_MPa", figure(yield(&tensile::YieldPoint::lower))},
            {"yield_elongation_percent", figure(yield(&tensile::YieldPoint::elongation), 100.0)},
            {"tensile_strength_MPa", figure(f.strength)},
            {"uniform_elongation_percent", figure(f.uniform, 100.0)},
            {"elongation_percent", figure(f.elongation, 100.0)},
            {"r_value", figure(f.r_value)},
            {"scatter_MPa", f.scatter}};
}

ordered_json law_json(const CoilReport& r, std::size_t i) {
    const tensile::LawFit& f = r.coil.fits[i];
    ordered_json numbers = ordered_json::array();
    for (const tensile::FittedNumber& n : f.numbers)
        numbers.push_back(
            {{"name", n.name}, {"value", n.value}, {"low", n.low}, {"high", n.high}, {"unit", n.unit}});
    ordered_json law = {{"law", tensile::law_word(f.law)},
                        {"residual_MPa", f.residual},
                        {"greatest_residual_MPa", f.greatest},
                        {"aic", f.aic ? ordered_json(*f.aic) : ordered_json(nullptr)},
                        {"bic", f.bic ? ordered_json(*f.bic) : ordered_json(nullptr)},
                        {"numbers", numbers},
                        {"beyond", f.beyond}};
    if (i < r.bends.size() && r.bends[i].solved)
        law["sample_bend"] = {{"springback_deg", r.bends[i].springback / degree},
                              {"inside_radius_mm", r.bends[i].inside_radius},
                              {"peak_force_N_per_mm", r.bends[i].force},
                              {"outer_log_strain", r.bends[i].outer_strain}};
    return law;
}

}  // namespace

ordered_json coil_json(const CoilReport& r) {
    const tensile::Coil& c = r.coil;
    ordered_json tests = ordered_json::array(), laws = ordered_json::array();
    for (std::size_t i = 0; i < c.tests.size(); ++i)
        tests.push_back(test_json(c.tests[i], r.records[i].file));
    for (std::size_t i = 0; i < c.fits.size(); ++i)
        if (c.fits[i].residual < 1e300) laws.push_back(law_json(r, i));
    ordered_json spread = nullptr;
    const job::LawSpread between = job::springback_spread(r.bends, c.fits, chosen_fit(r));
    if (between.laws > 0)
        spread = {{"least_deg", between.least / degree},
                  {"most_deg", between.most / degree},
                  {"laws", between.laws}};
    return {{"title", r.title},
            {"youngs_modulus_MPa", figure(c.modulus)},
            {"modulus_measured", c.modulus_measured},
            {"proof_stress_MPa", figure(c.proof)},
            {"upper_yield_MPa", figure(c.upper_yield)},
            {"lower_yield_MPa", figure(c.lower_yield)},
            {"yield_elongation_percent", figure(c.yield_elongation, 100.0)},
            {"tensile_strength_MPa", figure(c.strength)},
            {"uniform_elongation_percent", figure(c.uniform, 100.0)},
            {"elongation_percent", figure(c.elongation, 100.0)},
            {"r_value", figure(c.r_value)},
            {"tests", tests},
            {"laws", laws},
            {"law", tensile::law_word(r.chosen)},
            {"springback_between_laws", spread},
            {"said", r.said}};
}

}  // namespace overbend::documents
