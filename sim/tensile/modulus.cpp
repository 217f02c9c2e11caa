#include "sim/tensile/modulus.h"

#include <algorithm>
#include <cmath>

#include "sim/words.h"

namespace overbend::tensile {

namespace {

std::string gpa(double mpa) {
    return words("%.4g GPa", mpa / 1000.0);
}

}  // namespace

const std::vector<Family>& families() {
    static const std::vector<Family> all = {{"steel", 210e3, 0.30, 7850.0, 170e3, 235e3},
                                            {"aluminium", 70e3, 0.33, 2700.0, 61e3, 80e3},
                                            {"copper alloy", 115e3, 0.34, 8700.0, 95e3, 135e3}};
    return all;
}

const Family* family_of(double slope) {
    for (const Family& f : families())
        if (slope >= f.from && slope <= f.to) return &f;
    return nullptr;
}

Nominal nominal_of(const std::vector<Elastic>& tests, const std::optional<Nominal>& given) {
    if (given) return *given;
    double weights = 0.0, slope = 0.0, off = 1e300;
    for (const Elastic& e : tests) {
        const double least = std::max(e.slope.off, 0.01 * e.slope.value), weight = 1.0 / (least * least);
        weights += weight, slope += weight * e.slope.value;
        off = std::min(off, e.slope.off);
    }
    slope /= weights;
    off = std::min(off, 0.5 * slope);
    std::vector<const Family*> possible;
    if (const Family* own = family_of(slope); own && off <= well_measured * slope) possible = {own};
    if (possible.empty())
        for (const Family& f : families())
            if (slope + off >= f.from && slope - off <= f.to) possible.push_back(&f);
    if (possible.size() == 1)
        return {possible.front()->modulus, possible.front()->name,
                "The slope of the elastic part, " + gpa(slope) + words(" +- %.2g", off / 1000.0) +
                    ", is taken for that of " + possible.front()->name + "."};
    std::string names;
    for (const Family* f : possible) names += (names.empty() ? "" : " or ") + f->name;
    throw BadRecord(0,
                    "the elastic part has a slope of " + gpa(slope) + words(" +- %.2g", off / 1000.0) +
                        (names.empty() ? ", which no strip metal has" : ", which may be " + names),
                    "give --like CARD or --modulus, the modulus that the metal has");
}

Modulus choose_modulus(const Elastic& elastic, const Nominal& nominal) {
    const double slope = elastic.slope.value, off = elastic.slope.off;
    const double differs = slope / nominal.modulus - 1.0;
    const std::string range = gpa(slope) + words(" +- %.2g", off / 1000.0);
    const std::string other = gpa(nominal.modulus) + " of " + nominal.name;
    Modulus m;
    m.slope = elastic.slope;
    if (off <= well_measured * slope && std::abs(differs) <= 0.1) {
        m.value = elastic.slope;
        m.measured = true;
        return m;
    }
    m.value = {nominal.modulus, 0.03 * nominal.modulus};
    const bool clear = off <= roughly_measured * slope && std::abs(differs) * nominal.modulus > 1.5 * off;
    if (clear && differs < -0.1) {
        m.said.push_back("The elastic part has a slope of " + range + ", not the " + other +
                         ": the machine's own stretch is in the elongation. It is taken off, and the nominal "
                         "modulus goes into the card.");
    } else if (clear && differs > 0.1) {
        m.said.push_back("The elastic part has a slope of " + range + ", more than the " + other +
                         ": gauge length, area or a unit is wrong, or the extensometer sticks. The nominal "
                         "modulus goes into the card.");
    } else {
        m.said.push_back("The elastic part is too coarse for a modulus (" + range + " from " +
                         std::to_string(elastic.points) + " points): the nominal " + other +
                         " goes into the card, and plastic strain is counted from it.");
        m.slope = {nominal.modulus, 0.05 * nominal.modulus};
    }
    return m;
}

Record specimen_record(const Record& record, const Elastic& elastic, double slope, double modulus) {
    Record r = record;
    const double start = elastic.strain_at_zero(slope), machine = 1.0 / slope - 1.0 / modulus;
    for (std::size_t i = 0; i < r.size(); ++i) r.strain[i] -= start + r.stress[i] * machine;
    return r;
}

}  // namespace overbend::tensile
