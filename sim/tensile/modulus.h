// Young's modulus of the card: the measured one, or a nominal one where the record is too coarse or the
// machine itself gives way.
//
// Between grips or without a good extensometer the machine stretches in series with the specimen and the
// elastic part looks too soft: 60 GPa of steel. The record's own slope still gives the plastic strain right,
// since both parts are elastic; so the strain that is the machine's is taken off, S (1 / slope - 1 / E).
//
// Units  MPa.
// Source nominal moduli, Poisson's ratios and densities of the families: from memory; strip metals alone.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sim/tensile/elastic.h"

namespace overbend::tensile {

struct Family {
    std::string name;                                    // "steel"
    double modulus = 0.0, poisson = 0.0, density = 0.0;  // MPa, -, kg/m3
    double from = 0.0, to = 0.0;                         // slopes that are taken for it, MPa
};
const std::vector<Family>& families();
// The one whose slopes these are; none.
const Family* family_of(double slope);

// A modulus that is known from elsewhere.
struct Nominal {
    double modulus = 0.0;  // MPa
    std::string name;      // "dc01", "steel", "--modulus"
    std::string said;      // what was assumed; empty: it was given
};

struct Modulus {
    Figure value;           // of the card
    bool measured = false;  // else nominal
    Figure slope;  // of the line that plastic strain is counted from: the record's own, or the nominal
                   // one where the record is too coarse to have one
    std::vector<std::string> said;
};

// Measured where its off is at most this part of it, and within a tenth of the nominal one.
constexpr double well_measured = 0.03;
// The machine's stretch, or a wrong unit, is only seen where the off is at most this part.
constexpr double roughly_measured = 0.1;

// The given one, or that of the family whose slope all tests of a coil have together (their mean, by how well
// each is known). Throws BadRecord: the slope is that of no family, or may be that of two.
Nominal nominal_of(const std::vector<Elastic>& tests, const std::optional<Nominal>& given);

Modulus choose_modulus(const Elastic& elastic, const Nominal& nominal);

// The record with its elastic line through the origin, and its strain the specimen's alone.
Record specimen_record(const Record& record, const Elastic& elastic, double slope, double modulus);

}  // namespace overbend::tensile
