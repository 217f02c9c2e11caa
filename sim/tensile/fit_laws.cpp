#include "sim/tensile/fit_laws.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "sim/material/flow_curve.h"

namespace overbend::tensile {

namespace {

using Eigen::Index;
using Eigen::VectorXd;

// AIC and BIC of all laws, by the same number of independent points.
void compare(std::vector<LawFit>& fits, double n) {
    for (LawFit& f : fits) {
        if (f.count == 0) continue;
        const double mean = std::max(f.residual * f.residual, 1e-12);
        const double k = f.count + 1.0;  // the scatter is one too
        f.aic = n * std::log(mean) + 2.0 * k;
        f.bic = n * std::log(mean) + k * std::log(n);
    }
}

void set_residuals(LawFit& f, const VectorXd& left) {
    f.residual = std::sqrt(left.squaredNorm() / double(left.size()));
    f.greatest = left.cwiseAbs().maxCoeff();
}

const char* beyond_words(Law law) {
    switch (law) {
        case Law::swift:
        case Law::hollomon:
            return "hardens on as a power of the strain, without an end";
        case Law::voce:
            return "hardens up to Y + Q and no more";
        case Law::linear:
            return "hardens on at the same rate, which is too much";
        case Law::swift_voce:
            return "between the Swift and the Voce law, by its part";
        case Law::table:
            return "stays at its last stress, the least that is possible";
    }
    return "";
}

std::vector<const TrueCurve*> curves_of(const std::vector<FitInput>& tests) {
    std::vector<const TrueCurve*> curves;
    for (const FitInput& t : tests) curves.push_back(&t.curve);
    return curves;
}

const std::vector<std::pair<const char*, const char*>>& names_of(Law law) {
    static const std::vector<std::pair<const char*, const char*>> swift = {{"K", "MPa"},
                                                                           {"e0", ""},
                                                                           {"n", ""}},
                                                                  hollomon = {{"K", "MPa"}, {"n", ""}},
                                                                  voce = {{"Y", "MPa"},
                                                                          {"Q", "MPa"},
                                                                          {"b", ""}},
                                                                  linear = {{"Y", "MPa"}, {"H", "MPa"}};
    return law == Law::swift ? swift : law == Law::hollomon ? hollomon : law == Law::voce ? voce : linear;
}

LawFit fit_law(Law law, const Points& points, const std::vector<FitInput>& level,
               const std::vector<FitInput>& tests) {
    LawFit f;
    f.law = law;
    f.beyond = beyond_words(law);
    const Fitted found = fit(law, points);
    if (found.squares >= 1e300) {
        f.at_limit = true;
        f.residual = f.greatest = 1e300;
        return f;
    }
    f.count = free_numbers(law);
    const VectorXd deviation = variances(law, found, points, level, tests).cwiseSqrt().cwiseMin(10.0);
    for (Index i = 0; i < found.free.size(); ++i) {
        const auto& [name, unit] = names_of(law)[i];
        f.numbers.push_back({name, std::exp(found.free[i]), std::exp(found.free[i] - 2.0 * deviation[i]),
                             std::exp(found.free[i] + 2.0 * deviation[i]), unit});
    }
    VectorXd free = found.free;
    // What a card takes: exponents below 1, pre-strains from a millionth to 1, stresses up to 10 GPa.
    const auto hold = [&](Index i, double low, double high) {
        const double held = std::clamp(free[i], std::log(low), std::log(high));
        if (held != free[i]) f.at_limit = true;
        free[i] = held;
    };
    if (law == Law::swift) hold(0, 1.0, 1e4), hold(1, 1e-6, 1.0), hold(2, 1e-4, 0.99);
    if (law == Law::hollomon) hold(0, 1.0, 1e4), hold(1, 1e-4, 0.99);
    if (law == Law::voce) hold(0, 1.0, 1e4), hold(1, 1e-3, 1e4), hold(2, 1e-3, 1e4);
    if (law == Law::linear) hold(0, 1.0, 1e4), hold(1, 1e-3, 1e6);
    f.hardening = hardening_of(law, free);
    const VectorXd left = left_over(law, free, points);
    set_residuals(f, left);
    f.independent = independent(left);
    return f;
}

// Strains of a table that goes far: closely where a law bends, widely beyond. Straight pieces between them
// are within 2 in 1000 of it.
std::vector<double> table_strains() {
    std::vector<double> p = {0.0};
    for (double at = 2e-4; at < 2.0; at *= 1.3) p.push_back(at);
    p.push_back(2.0);
    return p;
}

LawFit mix_of(const LawFit& swift, const LawFit& voce, const Points& points) {
    LawFit f;
    f.law = Law::swift_voce;
    f.beyond = beyond_words(f.law);
    if (swift.numbers.empty() || voce.numbers.empty()) {
        f.at_limit = true;
        f.residual = f.greatest = 1e300;
        return f;
    }
    const auto at = [&](const LawFit& law, double p) {
        return material::flow_point(law.hardening, points.modulus, p).stress;
    };
    VectorXd a(points.p.size()), b(points.p.size());
    for (Index i = 0; i < a.size(); ++i) a[i] = at(swift, points.p[i]), b[i] = at(voce, points.p[i]);
    const VectorXd differs = a - b;
    const double square = differs.squaredNorm();
    const double best = square > 0.0 ? differs.dot(points.stress - b) / square : 0.5;
    const double part = std::clamp(best, 0.0, 1.0);
    const VectorXd left = points.stress - b - part * differs;
    const double rho = likeness(left);
    const double off =
        square > 0.0
            ? 2.0 * std::sqrt(left.squaredNorm() / double(a.size()) / square * (1.0 + rho) / (1.0 - rho))
            : 1.0;
    f.count = swift.count + voce.count + 1;
    f.numbers = {{"part of Swift", part, std::max(0.0, part - off), std::min(1.0, part + off), ""}};
    f.at_limit = part != best || swift.at_limit || voce.at_limit;
    material::Table table;
    table.p = table_strains();
    for (const double p : table.p) {
        const double stress = part * at(swift, p) + (1.0 - part) * at(voce, p);
        // A card's table does not fall.
        table.stress.push_back(table.stress.empty() ? stress : std::max(stress, table.stress.back()));
    }
    f.hardening = table;
    set_residuals(f, left);
    f.independent = independent(left);
    return f;
}

// Neighbours that fall are put together until they rise (pool adjacent violators).
void make_rising(std::vector<double>& stress) {
    std::vector<std::pair<double, double>> blocks;  // mean, weight
    for (const double s : stress) {
        blocks.push_back({s, 1.0});
        while (blocks.size() > 1 && blocks[blocks.size() - 2].first > blocks.back().first) {
            const auto last = blocks.back();
            blocks.pop_back();
            auto& before = blocks.back();
            before.first =
                (before.first * before.second + last.first * last.second) / (before.second + last.second);
            before.second += last.second;
        }
    }
    std::size_t i = 0;
    for (const auto& [mean, weight] : blocks)
        for (double k = 0.0; k < weight; k += 1.0) stress[i++] = mean;
}

LawFit table_of(const std::vector<FitInput>& tests, const Points& points) {
    LawFit f;
    f.law = Law::table;
    f.beyond = beyond_words(f.law);
    double to = 1e300, from = 0.0;
    for (const FitInput& t : tests) to = std::min(to, t.curve.to), from = std::max(from, t.curve.from);
    std::vector<std::pair<double, double>> all;
    for (Index i = 0; i < points.p.size(); ++i) all.emplace_back(points.p[i], points.stress[i]);
    std::sort(all.begin(), all.end());

    // Some twenty means, closer where the curve bends: even in the root of the strain.
    constexpr int most = 24;
    material::Table table;
    std::size_t i = 0;
    for (int bin = 1; bin <= most && i < all.size(); ++bin) {
        const double end =
            bin == most ? 1e300
                        : std::pow(std::sqrt(from) + (std::sqrt(to) - std::sqrt(from)) * bin / most, 2.0);
        double p = 0.0, stress = 0.0, n = 0.0;
        for (; i < all.size() && all[i].first <= end; ++i)
            p += all[i].first, stress += all[i].second, n += 1.0;
        if (n > 0.0) table.p.push_back(p / n), table.stress.push_back(stress / n);
    }
    make_rising(table.stress);
    double level = 0.0;
    int yielding = 0;
    for (const FitInput& t : tests)
        if (t.level) level += *t.level, ++yielding;
    if (yielding > 0) {
        // It yields at one load up to where even hardening begins.
        const double held = std::min(level / yielding, table.stress.front());
        table.p.insert(table.p.begin(), {0.0, 0.98 * table.p.front()});
        table.stress.insert(table.stress.begin(), {held, held});
    } else {
        // Straight back to the yield, no steeper than the first points allow.
        const double slope =
            table.p.size() > 1 ? (table.stress[1] - table.stress[0]) / (table.p[1] - table.p[0]) : 0.0;
        const double first =
            table.stress.front() - std::min(slope * table.p.front(), 0.15 * table.stress.front());
        table.p.insert(table.p.begin(), 0.0);
        table.stress.insert(table.stress.begin(), first);
    }
    // What lies below 0, no card takes.
    for (double& stress : table.stress) stress = std::max(stress, 0.01 * table.stress.back());
    f.hardening = table;
    VectorXd left(points.p.size());
    for (Index k = 0; k < left.size(); ++k)
        left[k] = points.stress[k] - material::flow_point(table, points.modulus, points.p[k]).stress;
    set_residuals(f, left);
    return f;
}

}  // namespace

std::vector<LawFit> fit_laws(const std::vector<FitInput>& tests) {
    const std::vector<FitInput> level = levelled(tests);
    const Points points = pooled(curves_of(level), tests.front().modulus);
    std::vector<LawFit> fits;
    for (const Law law : {Law::swift, Law::hollomon, Law::voce, Law::linear})
        fits.push_back(fit_law(law, points, level, tests));
    fits.push_back(mix_of(fits[0], fits[2], points));
    fits.push_back(table_of(level, points));
    double n = 10.0, least = 1e300;
    for (const LawFit& f : fits)
        if (f.count > 0 && f.residual < least) least = f.residual, n = std::max(f.independent, 10.0);
    compare(fits, n);
    if (std::all_of(fits.begin(), fits.end(), [](const LawFit& f) { return f.residual >= 1e300; }))
        throw BadRecord(0, "no hardening law can be fitted",
                        "give a record that hardens between yield and the greatest load");
    return fits;
}

const LawFit& best_of(const std::vector<LawFit>& fits) {
    const LawFit* best = nullptr;
    for (const bool limits_too : {false, true}) {
        for (const LawFit& f : fits)
            if (f.bic && (limits_too || !f.at_limit) && (!best || *f.bic < *best->bic)) best = &f;
        if (best) break;
    }
    return best ? *best : fits.back();
}

double stress_of(const LawFit& fit, double modulus, double p) {
    return material::flow_point(fit.hardening, modulus, p).stress;
}

}  // namespace overbend::tensile
