#include "sim/tensile/record.h"

#include <algorithm>
#include <cmath>

namespace overbend::tensile {

Record only(const Record& record, const std::vector<std::size_t>& kept) {
    Record r;
    for (const std::size_t i : kept) {
        r.strain.push_back(record.strain[i]);
        r.stress.push_back(record.stress[i]);
        if (!record.width_strain.empty()) r.width_strain.push_back(record.width_strain[i]);
        r.line.push_back(record.line[i]);
    }
    return r;
}

std::size_t greatest_stress(const Record& record) {
    return static_cast<std::size_t>(std::max_element(record.stress.begin(), record.stress.end()) -
                                    record.stress.begin());
}

double scatter_of(const std::vector<double>& stress) {
    if (stress.size() < 8) return 0.0;
    std::vector<double> bend;
    for (std::size_t i = 1; i + 1 < stress.size(); ++i)
        bend.push_back(std::abs(stress[i + 1] - 2.0 * stress[i] + stress[i - 1]));
    std::nth_element(bend.begin(), bend.begin() + bend.size() / 2, bend.end());
    // A second difference of independent values has sqrt(6) times their deviation; the median of its size is
    // 0.6745 deviations.
    return bend[bend.size() / 2] / (0.6745 * std::sqrt(6.0));
}

}  // namespace overbend::tensile
