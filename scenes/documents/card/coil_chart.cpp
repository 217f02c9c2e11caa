#include "scenes/documents/card/coil_chart.h"

#include <algorithm>
#include <cmath>
#include <filesystem>

#include "scenes/documents/card/coil_tables.h"
#include "sim/words.h"

namespace overbend::documents {

namespace {

using picture::Point;

// At most so many points: a record may have a million.
std::vector<Point> thinned(const std::vector<double>& x, const std::vector<double>& y, std::size_t most) {
    std::vector<Point> points;
    const std::size_t step = std::max<std::size_t>(1, x.size() / most);
    for (std::size_t i = 0; i < x.size(); ++i)
        if (i % step == 0 || i + 1 == x.size()) points.emplace_back(x[i], y[i]);
    return points;
}

void add_marks(const CoilReport& r, chart::TensileFit& chart) {
    const tensile::TestResult& t = r.coil.tests.front();
    const tensile::Figures& f = t.figures;
    const double at_proof = f.proof.value / f.modulus.value + 0.002;
    if (!f.yield_point)
        chart.marks.push_back({words("Rp0.2 %.0f MPa", f.proof.value), {at_proof, f.proof.value}});
    if (f.yield_point) {
        chart.marks.push_back({words("ReH %.0f MPa", f.yield_point->upper.value),
                               {f.yield_point->upper.value / f.modulus.value, f.yield_point->upper.value}});
        chart.marks.push_back({words("Ae %.1f %%", 100.0 * f.yield_point->elongation.value),
                               {f.yield_point->last_strain, f.yield_point->level}});
    }
    chart.marks.push_back({words("Rm %.0f MPa, Ag %.1f %%", f.strength.value, 100.0 * f.uniform.value),
                           {f.uniform_total.value, f.strength.value}});
}

}  // namespace

chart::TensileFit coil_chart(const CoilReport& r) {
    const tensile::Coil& c = r.coil;
    chart::TensileFit chart;
    chart.title = r.title;
    std::vector<std::pair<double, double>> all;
    for (const tensile::TestResult& t : c.tests) {
        chart.records.push_back(thinned(t.specimen.strain, t.specimen.stress, 800));
        chart.record_end = std::max(chart.record_end, t.curve.to);
    }
    for (const tensile::TrueCurve& curve : c.level)
        for (std::size_t i = 0; i < curve.p.size(); ++i) all.emplace_back(curve.p[i], curve.stress[i]);
    std::sort(all.begin(), all.end());
    for (const auto& [p, stress] : all) chart.true_curve.emplace_back(p, stress);
    add_marks(r, chart);

    for (const job::SampleBend& b : r.bends)
        if (b.solved && b.law == r.chosen) chart.bend_strain = b.outer_strain;
    const double far = std::max({0.5, 1.3 * chart.record_end, 1.2 * chart.bend_strain.value_or(0.0)});
    for (const tensile::LawFit& fit : c.fits) {
        if (fit.law == tensile::Law::table || fit.residual >= 1e300) continue;
        chart::TensileLaw law;
        law.name = tensile::law_word(fit.law);
        if (fit.law == r.chosen) law.name += " (in the card)";
        for (int i = 0; i <= 200; ++i) {
            const double p = far * std::pow(i / 200.0, 2.0);
            law.curve.emplace_back(p, tensile::stress_of(fit, c.modulus.value, p));
        }
        for (const auto& [p, stress] : all)
            law.residual.emplace_back(p, stress - tensile::stress_of(fit, c.modulus.value, p));
        chart.laws.push_back(std::move(law));
    }
    if (const std::string spread = spread_words(r); !spread.empty()) chart.remarks.push_back(spread);
    return chart;
}

}  // namespace overbend::documents
