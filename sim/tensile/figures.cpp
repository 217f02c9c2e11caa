#include "sim/tensile/figures.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "sim/tensile/proof.h"
#include "sim/words.h"

namespace overbend::tensile {

namespace {

// What a slope that is off makes of the proof stress.
Figure find_proof(const Record& record, const Elastic& elastic, const Figure& line) {
    const auto at = [&](double slope) {
        return proof_stress(record, slope, elastic.strain_at_zero(slope), 0.002);
    };
    const double slope = line.value, off = std::min(line.off, 0.5 * slope);
    const auto middle = at(slope);
    if (!middle)
        throw BadRecord(record.line.back(),
                        words("the record ends at a strain of %.4g, before 0.2 per cent of plastic strain",
                              record.strain.back()),
                        "give the record up to the greatest load at least");
    double differs = 0.0;
    for (const double other : {slope - off, slope + off})
        if (const auto stress = at(other))
            differs = std::max(differs, std::abs(stress->value - middle->value));
    return {middle->value, std::hypot(middle->off, differs)};
}

// The greatest load: its total strain, and its stress.
struct Top {
    Figure strain, stress;
};

Top find_top(const Record& r, double scatter) {
    const std::size_t top = greatest_stress(r);
    const double most = r.stress[top];
    const double near = most - std::max(0.002 * most, 4.0 * scatter);
    std::size_t from = top, to = top;
    // By the mean of five points: one that scatters is no end.
    const auto is_near = [&](std::size_t i) {
        const std::size_t first = i - std::min<std::size_t>(i, 2), last = std::min(r.size() - 1, i + 2);
        double sum = 0.0;
        for (std::size_t k = first; k <= last; ++k) sum += r.stress[k];
        return sum >= near * static_cast<double>(last - first + 1);
    };
    while (from > 0 && is_near(from - 1)) --from;
    while (to + 1 < r.size() && is_near(to + 1)) ++to;
    const double width = r.strain[to] - r.strain[from];
    if (to - from < 9 || width <= 0.0) {
        const std::size_t before = top - std::min<std::size_t>(top, 1),
                          after = std::min(r.size() - 1, top + 1);
        return {{r.strain[top], 0.5 * (r.strain[after] - r.strain[before])}, {most, 2.0 * scatter}};
    }
    const Eigen::Index n = static_cast<Eigen::Index>(to - from + 1);
    const auto terms_at = [&](double strain) {
        const double x = (strain - r.strain[from]) / width;
        return Eigen::RowVector4d(1.0, x, x * x, x * x * x);
    };
    Eigen::MatrixXd terms(n, 4);
    Eigen::VectorXd stress(n);
    for (Eigen::Index i = 0; i < n; ++i) {
        terms.row(i) = terms_at(r.strain[from + i]);
        stress[i] = r.stress[from + i];
    }
    const Eigen::Vector4d c = terms.colPivHouseholderQr().solve(stress);
    const double left = std::sqrt((stress - terms * c).squaredNorm() / (double(n) - 4.0));
    const double off = 2.0 * 2.0 * left / std::sqrt(double(n));  // four numbers: twice that of a mean
    constexpr int places = 400;
    double at = r.strain[from], highest = -1e300;
    for (int i = 0; i <= places; ++i) {
        const double strain = r.strain[from] + width * i / places, here = terms_at(strain).dot(c);
        if (here > highest) highest = here, at = strain;
    }
    // As far as the curve is within its off of the top.
    double low = at, high = at;
    for (int i = 0; i <= places; ++i) {
        const double strain = r.strain[from] + width * i / places;
        if (terms_at(strain).dot(c) > highest - off)
            low = std::min(low, strain), high = std::max(high, strain);
    }
    return {{at, std::max(0.5 * (high - low), width / places)}, {highest, off}};
}

std::optional<Figure> find_r_value(const Record& r, double modulus, double poisson, double uniform) {
    if (r.width_strain.empty()) return std::nullopt;
    const double from = std::min(0.02, uniform / 3.0);
    std::vector<double> along, across;
    const std::size_t top = greatest_stress(r);
    for (std::size_t i = 0; i <= top; ++i) {
        const double elastic = r.stress[i] * (1.0 + r.strain[i]) / modulus;
        const double plastic = std::log1p(r.strain[i]) - elastic;
        if (plastic < from || plastic > std::log1p(uniform)) continue;
        along.push_back(plastic);
        across.push_back(std::log1p(r.width_strain[i]) + poisson * elastic);
    }
    if (along.size() < 5) return std::nullopt;
    const double n = static_cast<double>(along.size());
    double ma = 0.0, mc = 0.0, aa = 0.0, ac = 0.0, cc = 0.0;
    for (std::size_t i = 0; i < along.size(); ++i) ma += along[i] / n, mc += across[i] / n;
    for (std::size_t i = 0; i < along.size(); ++i) {
        aa += (along[i] - ma) * (along[i] - ma);
        ac += (along[i] - ma) * (across[i] - mc);
        cc += (across[i] - mc) * (across[i] - mc);
    }
    if (aa <= 0.0) return std::nullopt;
    const double slope = ac / aa;
    if (slope >= -0.02 || slope <= -0.98) return std::nullopt;
    const double off = 2.0 * std::sqrt(std::max(0.0, cc - slope * ac) / (n - 2.0) / aa);
    return Figure{-slope / (1.0 + slope), off / ((1.0 + slope) * (1.0 + slope))};
}

}  // namespace

Figures find_figures(const Record& record, const Elastic& elastic, const Figure& line, const Record& specimen,
                     const Figure& modulus, bool fractured) {
    Figures f;
    f.slope = elastic.slope;
    f.modulus = modulus;
    f.proof = find_proof(record, elastic, line);
    const auto beyond =
        std::find_if(specimen.strain.begin(), specimen.strain.end(), [&](double e) { return e > 0.004; });
    f.scatter =
        scatter_of({specimen.stress.begin() + (beyond - specimen.strain.begin()), specimen.stress.end()});
    f.yield_point = find_yield_point(specimen, modulus.value);
    const Top greatest = find_top(specimen, f.scatter);
    f.strength = greatest.stress;
    f.uniform_total = greatest.strain;
    const double elastic_part = f.strength.value / modulus.value;
    f.uniform = {f.uniform_total.value - elastic_part,
                 std::hypot(f.uniform_total.off, elastic_part * modulus.off / modulus.value)};
    f.neck_seen =
        specimen.stress.back() < f.strength.value - std::max(0.005 * f.strength.value, 5.0 * f.scatter);
    if (fractured) {
        const std::size_t last = specimen.size() - 1;
        const double gap = specimen.strain[last] - specimen.strain[last - 1];
        f.elongation =
            Figure{specimen.strain[last] - specimen.stress[last] / modulus.value, std::max(gap, 0.002)};
    }
    const Family* family = family_of(modulus.value);
    f.r_value = find_r_value(specimen, modulus.value, family ? family->poisson : 0.3, f.uniform.value);
    return f;
}

}  // namespace overbend::tensile
