#include "sim/shop/tool_steel.h"

#include <algorithm>
#include <array>
#include <utility>

#include "sim/errors.h"
#include "sim/words.h"

namespace overbend::shop {

namespace {

void require_at_least(const char* name, double value, double least, const char* unit) {
    if (value >= least) return;
    throw OutOfRange(name, words("%g%s cannot be", value, unit), words("give %g%s or more", least, unit));
}

}  // namespace

Allowable allowables(const ToolSteel& steel) {
    require_at_least("compressive yield of a tool steel", steel.compressive_yield, 1.0, " MPa");
    require_at_least("bending strength of a tool steel", steel.bending_strength, 1.0, " MPa");
    require_at_least("safety in tension", steel.safety_tension, 1.0, "");
    require_at_least("safety in compression", steel.safety_compression, 1.0, "");
    const double compression = steel.compressive_yield / steel.safety_compression;
    return {steel.bending_strength / steel.safety_tension, compression, indentation_pressure(steel)};
}

double indentation_pressure(const ToolSteel& steel) {
    constexpr double seen_from_above = 0.927;  // of the faces of a pyramid of 136 degrees: sin(68)
    constexpr double standard_gravity = 9.80665;
    return steel.hardness > 0.0 ? standard_gravity / seen_from_above * steel.hardness
                                : 2.8 * steel.compressive_yield;
}

LineLoad usual_line_load(double vickers) {
    // As rolled or normalised; hardened and tempered as delivered; hardened throughout.
    if (vickers < 250.0) return {400.0, 300.0, 500.0};
    if (vickers < 400.0) return {800.0, 600.0, 1000.0};
    return {1500.0, 1000.0, 2000.0};
}

double vickers_of_rockwell(double hrc) {
    static constexpr std::array<std::pair<double, double>, 11> table = {{{20.0, 238.0},
                                                                         {30.0, 302.0},
                                                                         {40.0, 392.0},
                                                                         {50.0, 513.0},
                                                                         {55.0, 595.0},
                                                                         {58.0, 653.0},
                                                                         {60.0, 697.0},
                                                                         {62.0, 746.0},
                                                                         {64.0, 800.0},
                                                                         {66.0, 865.0},
                                                                         {67.0, 900.0}}};
    if (!(hrc >= table.front().first && hrc <= table.back().first))
        throw OutOfRange("hardness", words("%g HRC cannot be converted", hrc), "give 20 to 67 HRC");
    std::size_t i = 1;
    while (table[i].first < hrc) ++i;
    const double share = (hrc - table[i - 1].first) / (table[i].first - table[i - 1].first);
    return table[i - 1].second + share * (table[i].second - table[i - 1].second);
}

}  // namespace overbend::shop
