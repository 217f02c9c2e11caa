#include "sim/tensile/elastic.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "sim/counted.h"
#include "sim/tensile/proof.h"
#include "sim/words.h"

namespace overbend::tensile {

namespace {

constexpr std::size_t fewest_elastic = 5;

struct Sums {
    double x = 0.0, y = 0.0, xx = 0.0, xy = 0.0, yy = 0.0;  // means, then sums of squares about them
};

Sums sums_of(const std::vector<double>& x, const std::vector<double>& y) {
    Sums s;
    const double n = static_cast<double>(x.size());
    for (std::size_t i = 0; i < x.size(); ++i) s.x += x[i] / n, s.y += y[i] / n;
    for (std::size_t i = 0; i < x.size(); ++i) {
        s.xx += (x[i] - s.x) * (x[i] - s.x);
        s.xy += (x[i] - s.x) * (y[i] - s.y);
        s.yy += (y[i] - s.y) * (y[i] - s.y);
    }
    return s;
}

// How much steeper the upper half of the window is than the lower, as a part of the slope, where that is more
// than scatter; 0 otherwise.
double bow_of(const std::vector<double>& x, const std::vector<double>& y) {
    const double middle =
        0.5 * (*std::min_element(x.begin(), x.end()) + *std::max_element(x.begin(), x.end()));
    std::vector<double> x1, y1, x2, y2;
    for (std::size_t i = 0; i < x.size(); ++i) {
        (x[i] < middle ? x1 : x2).push_back(x[i]);
        (x[i] < middle ? y1 : y2).push_back(y[i]);
    }
    if (x1.size() < 4 || x2.size() < 4) return 0.0;
    const Sums a = sums_of(x1, y1), b = sums_of(x2, y2), all = sums_of(x, y);
    if (a.xx <= 0.0 || b.xx <= 0.0 || all.xy == 0.0) return 0.0;
    const double slope_a = a.xy / a.xx, slope_b = b.xy / b.xx, slope = all.xy / all.xx;
    const auto variance = [](const Sums& s, std::size_t n) {
        return std::max(0.0, s.yy - s.xy * s.xy / s.xx) / (static_cast<double>(n) - 2.0) / s.xx;
    };
    const double off = std::sqrt(variance(a, x1.size()) + variance(b, x2.size()));
    const double bow = std::abs(slope_b - slope_a);
    return bow > 2.5 * off ? bow / std::abs(slope) : 0.0;
}

int turns_of(const std::vector<double>& values) {
    int turns = 0;
    for (std::size_t i = 2; i < values.size(); ++i)
        if ((values[i] - values[i - 1]) * (values[i - 1] - values[i - 2]) < 0.0) ++turns;
    return turns;
}

struct Window {
    Elastic line;
    double score = 1e300;  // what its slope may be off, as a part of it
};

std::optional<Window> fit_window(const Record& r, double from, double to) {
    std::vector<double> e, s;
    for (std::size_t i = 0; i < r.size() && r.stress[i] < to; ++i)
        if (r.stress[i] >= from) e.push_back(r.strain[i]), s.push_back(r.stress[i]);
    if (e.size() < fewest_elastic) return std::nullopt;
    const Sums m = sums_of(e, s);
    if (m.xx <= 0.0 || m.yy <= 0.0 || m.xy <= 0.0) return std::nullopt;
    const double over_strain = m.xy / m.xx, over_stress = m.yy / m.xy;  // slopes; the second is the steeper
    const double together = m.xy * m.xy / (m.xx * m.yy);
    if (together < 0.5) return std::nullopt;
    const int strain_turns = turns_of(e), stress_turns = turns_of(s);
    double slope = std::sqrt(over_strain * over_stress), doubt = 0.5 * std::max(0.0, 1.0 - together);
    const double clearly = 0.1 * static_cast<double>(e.size());
    if (strain_turns > stress_turns + clearly)
        slope = over_stress, doubt = 0.0;
    else if (stress_turns > strain_turns + clearly || strain_turns + stress_turns == 0)
        slope = over_strain, doubt = 0.0;
    const double n = static_cast<double>(e.size());
    const double scatter =
        std::sqrt(std::max(0.0, 1.0 / together - 1.0) / (n - 2.0));  // of the slope, as a part of it
    const double bow = bow_of(s, e);
    Window w;
    w.score = std::hypot(2.0 * scatter, doubt) + 0.5 * bow;
    w.line.slope = {slope, slope * w.score};
    w.line.strain_mean = m.x, w.line.stress_mean = m.y;
    w.line.from = from, w.line.to = to;
    w.line.points = e.size();
    return w;
}

// The stress at the knee of the record: farthest above the straight line from its start to the greatest load.
double knee_stress(const Record& r) {
    const std::size_t top = greatest_stress(r);
    const double first = *std::min_element(r.strain.begin(), r.strain.begin() + top + 1);
    const double run = std::max(1e-12, r.strain[top] - first), most = r.stress[top];
    double farthest = -1e300, at = most;
    for (std::size_t i = 0; i <= top; ++i) {
        const double above = r.stress[i] / most - (r.strain[i] - first) / run;
        if (above > farthest) farthest = above, at = r.stress[i];
    }
    return at;
}

std::optional<Window> best_window(const Record& r, double proof) {
    std::vector<Window> all;
    for (const double from : {0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4})
        for (const double to : {0.4, 0.5, 0.6, 0.7, 0.8})
            if (to - from > 0.24)
                if (const auto w = fit_window(r, from * proof, to * proof)) all.push_back(*w);
    if (all.empty()) return std::nullopt;
    Window best = *std::min_element(all.begin(), all.end(),
                                    [](const Window& a, const Window& b) { return a.score < b.score; });
    double sum = 0.0;
    int near = 0;
    for (const Window& w : all) {
        if (w.score > 1.5 * best.score) continue;
        sum += std::pow(w.line.slope.value / best.line.slope.value - 1.0, 2.0);
        ++near;
    }
    best.line.slope.off = best.line.slope.value * std::hypot(best.score, std::sqrt(sum / near));
    return best;
}

}  // namespace

Elastic find_elastic(const Record& record) {
    const double knee = knee_stress(record);
    double proof = knee;
    std::optional<Window> best;
    for (int pass = 0; pass < 3; ++pass) {
        best = best_window(record, proof);
        if (!best) break;
        const double slope = best->line.slope.value;
        if (const auto found = proof_stress(record, slope, best->line.strain_at_zero(slope), 0.002))
            proof = found->value;
    }
    if (best) return best->line;
    const double first = record.stress.front();
    const auto below =
        std::count_if(record.stress.begin(), record.stress.end(), [&](double s) { return s < 0.8 * knee; });
    throw BadRecord(
        record.line.front(),
        first > 0.5 * knee
            ? words("the record begins at %.4g MPa, with the yield at about %.4g MPa: it has no "
                    "elastic part",
                    first, knee)
            : words("the elastic part has %s that rise together",
                    counted(static_cast<std::size_t>(below), "point").c_str()),
        words("give a record from the unloaded specimen on, with %d points at least below %.3g MPa",
              static_cast<int>(fewest_elastic), 0.8 * knee));
}

}  // namespace overbend::tensile
