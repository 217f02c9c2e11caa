#include "tests/tensile/written.h"

#include <cstdio>

namespace overbend::tests {

std::string written(const tensile::Record& record, const Writing& w) {
    std::string text = w.above;
    for (std::size_t i = 0; i < record.size(); ++i) {
        char line[80];
        std::snprintf(line, sizeof line, "%.8g|%.8g", record.strain[i] * w.per_strain,
                      record.stress[i] * w.per_stress);
        std::string row;
        for (const char* c = line; *c; ++c) {
            if (*c == '|')
                row += w.separator;
            else
                row += *c == '.' && w.decimal_comma ? ',' : *c;
        }
        text += row + w.behind + "\n";
    }
    return text;
}

}  // namespace overbend::tests
