#include "sim/tensile/proof.h"

#include <algorithm>
#include <cmath>

namespace overbend::tensile {

std::optional<Figure> proof_stress(const Record& record, double slope, double strain_at_zero, double offset) {
    const auto above = [&](std::size_t i) {  // MPa over the line
        return record.stress[i] - slope * (record.strain[i] - strain_at_zero - offset);
    };
    const std::size_t top = greatest_stress(record);
    std::size_t i = 1;
    while (i < record.size() && above(i) > 0.0) ++i;
    if (i >= record.size() || record.stress[i] < 0.2 * record.stress[top]) return std::nullopt;
    const double a = above(i - 1), b = above(i);
    const double part = a > b ? a / (a - b) : 0.0;
    const double stress = record.stress[i - 1] + part * (record.stress[i] - record.stress[i - 1]);

    // Points within a tenth of a per cent, on a line: it meets the other one without most of their scatter.
    const double strain = record.strain[i - 1] + part * (record.strain[i] - record.strain[i - 1]);
    double n = 0.0, me = 0.0, ms = 0.0, ee = 0.0, es = 0.0, ss = 0.0;
    const auto near = [&](std::size_t k) { return std::abs(record.strain[k] - strain) < 0.001; };
    for (std::size_t k = 0; k < record.size(); ++k)
        if (near(k)) n += 1.0, me += record.strain[k], ms += record.stress[k];
    if (n < 6.0) {
        const double gap = std::abs(record.stress[i] - record.stress[i - 1]);
        return Figure{stress, 0.25 * gap + 2.0 * scatter_of(record.stress)};
    }
    me /= n, ms /= n;
    for (std::size_t k = 0; k < record.size(); ++k) {
        if (!near(k)) continue;
        const double de = record.strain[k] - me, ds = record.stress[k] - ms;
        ee += de * de, es += de * ds, ss += ds * ds;
    }
    const double line = ee > 0.0 ? es / ee : 0.0;
    if (line > 0.5 * slope) return Figure{stress, 2.0 * scatter_of(record.stress)};
    // ms + line (e - me) = slope (e - strain_at_zero - offset)
    const double e = (ms - line * me + slope * (strain_at_zero + offset)) / (slope - line);
    const double scatter = std::sqrt(std::max(0.0, ss - line * es) / std::max(1.0, n - 2.0));
    return Figure{ms + line * (e - me), 2.0 * scatter / std::sqrt(n)};
}

}  // namespace overbend::tensile
