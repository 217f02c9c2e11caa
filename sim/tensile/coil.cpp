#include "sim/tensile/coil.h"

#include <algorithm>
#include <cmath>
#include <functional>

namespace overbend::tensile {

namespace {

double deviation_of(const std::vector<Figure>& figures) {
    if (figures.size() < 2) return 0.0;
    double mean = 0.0, squares = 0.0;
    for (const Figure& f : figures) mean += f.value / static_cast<double>(figures.size());
    for (const Figure& f : figures) squares += (f.value - mean) * (f.value - mean);
    return std::sqrt(squares / (static_cast<double>(figures.size()) - 1.0));
}

Figure mean_of(const std::vector<Figure>& figures) {
    const double n = static_cast<double>(figures.size());
    Figure mean;
    for (const Figure& f : figures) mean.value += f.value / n, mean.off += f.off / n;
    mean.off = std::hypot(mean.off, 2.0 * deviation_of(figures) / std::sqrt(n));
    return mean;
}

// Of those that have it; none: nobody has.
std::optional<Figure> mean_if(const std::vector<TestResult>& tests,
                              const std::function<std::optional<Figure>(const Figures&)>& of) {
    std::vector<Figure> known;
    for (const TestResult& t : tests)
        if (const auto figure = of(t.figures)) known.push_back(*figure);
    if (known.empty()) return std::nullopt;
    return mean_of(known);
}

FitInput fit_input(const TestResult& t, const Figure& modulus) {
    FitInput input;
    input.curve = t.curve;
    input.modulus = modulus.value;
    if (t.figures.yield_point) input.level = t.figures.yield_point->level;
    // The same record, its elastic line at either end of what it may be.
    const Elastic& e = t.from.elastic;
    const Figure& line = t.modulus.slope;
    for (const double side : {-1.0, 1.0}) {
        const double slope = line.value + side * std::min(line.off, 0.3 * line.value);
        const Record other = specimen_record(t.from.mended.record, e, slope, modulus.value);
        Figures shifted = t.figures;
        const double moved =
            other.strain[greatest_stress(other)] - t.specimen.strain[greatest_stress(t.specimen)];
        shifted.uniform_total.value += moved;
        if (shifted.yield_point) shifted.yield_point->last_strain += moved;
        input.shifted.push_back(true_curve(other, modulus.value, shifted));
    }
    return input;
}

}  // namespace

Prepared prepare(const Record& raw) {
    Prepared p;
    p.mended = mend(raw);
    p.elastic = find_elastic(p.mended.record);
    return p;
}

Coil read_coil(std::vector<Prepared> prepared, const std::optional<Nominal>& given) {
    Coil coil;
    std::vector<Elastic> elastic;
    for (const Prepared& p : prepared) elastic.push_back(p.elastic);
    coil.nominal = nominal_of(elastic, given);
    std::vector<Figure> moduli;
    for (const Elastic& e : elastic)
        if (const Modulus m = choose_modulus(e, coil.nominal); m.measured) moduli.push_back(m.value);
    coil.modulus_measured = !moduli.empty();
    coil.modulus =
        coil.modulus_measured ? mean_of(moduli) : Figure{coil.nominal.modulus, 0.03 * coil.nominal.modulus};

    std::vector<FitInput> inputs;
    for (Prepared& p : prepared) {
        try {
            TestResult t;
            t.from = std::move(p);
            t.modulus = choose_modulus(t.from.elastic, coil.nominal);
            const Elastic& e = t.from.elastic;
            t.specimen = specimen_record(t.from.mended.record, e, t.modulus.slope.value, coil.modulus.value);
            t.figures = find_figures(t.from.mended.record, e, t.modulus.slope, t.specimen, coil.modulus,
                                     t.from.mended.fractured);
            t.curve = true_curve(t.specimen, coil.modulus.value, t.figures);
            inputs.push_back(fit_input(t, coil.modulus));
            coil.tests.push_back(std::move(t));
        } catch (const BadRecord& bad) {
            throw BadTest(coil.tests.size(), bad);
        }
    }
    const auto& tests = coil.tests;
    coil.proof = *mean_if(tests, [](const Figures& f) { return std::optional<Figure>(f.proof); });
    coil.strength = *mean_if(tests, [](const Figures& f) { return std::optional<Figure>(f.strength); });
    coil.uniform = *mean_if(tests, [](const Figures& f) { return std::optional<Figure>(f.uniform); });
    coil.elongation = mean_if(tests, [](const Figures& f) { return f.elongation; });
    coil.r_value = mean_if(tests, [](const Figures& f) { return f.r_value; });
    const auto of_yield = [&](Figure YieldPoint::*which) {
        return mean_if(tests, [which](const Figures& f) {
            return f.yield_point ? std::optional<Figure>((*f.yield_point).*which) : std::nullopt;
        });
    };
    coil.upper_yield = of_yield(&YieldPoint::upper);
    coil.lower_yield = of_yield(&YieldPoint::lower);
    coil.yield_elongation = of_yield(&YieldPoint::elongation);
    std::vector<Figure> strengths;
    for (const TestResult& t : tests) strengths.push_back(t.figures.strength);
    coil.strength_differs = 2.0 * deviation_of(strengths) / coil.strength.value;
    for (const FitInput& input : levelled(inputs)) coil.level.push_back(input.curve);
    coil.fits = fit_laws(inputs);
    return coil;
}

}  // namespace overbend::tensile
