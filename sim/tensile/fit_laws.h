// Hardening laws fitted to true stress over plastic strain, and compared.
//
// Swift, Hollomon, Voce and a straight line: least squares of the stress by Levenberg and Marquardt's method,
// from several starts. Swift-Voce: a part of the fitted Swift law and the rest of the fitted Voce law; the
// part is fitted, from 0 to 1. Table: the points themselves, gathered, made to rise, none beyond.
//
// What each assumes beyond the greatest load, where there are no points:
//   swift, hollomon   hardens on as a power of the strain, without an end
//   voce              hardens up to Y + Q, no more
//   linear            hardens on at the same rate: too much
//   swift-voce        in between, by its part
//   table             stays at its last stress: the least that is possible
//
// Off     two standard deviations: of the scatter, where neighbouring points scatter alike with the number of
//         independent ones (n (1 - rho) / (1 + rho), rho between neighbours); of the modulus; and of the
//         tests of one coil among themselves, where there are several. Tests of one coil are brought to one
//         level of stress before they are fitted together, so that residuals are those of the laws, not of
//         the coil. Where the law does not follow the record they say how well its numbers are known, not how
//         well it follows.
// Compared by AIC, n ln(sum of squares / n) + 2 k, and BIC, the same with k ln n (H. Akaike 1974, G. Schwarz
//         1978: formulas from memory), with the independent points n of the law that follows the record best,
//         the same for all; the table has no numbers to count.
//
// Units   MPa; p without unit.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sim/tensile/least_squares.h"

namespace overbend::tensile {

// A number of a law; low and high: what it may be.
struct FittedNumber {
    std::string name;  // "K"
    double value = 0.0;
    double low = 0.0, high = 0.0;
    std::string unit;  // "MPa" or none
};

struct LawFit {
    Law law = Law::swift;
    material::Hardening hardening;  // as a card has it; swift-voce: a table up to p = 2
    std::vector<FittedNumber> numbers;
    double residual = 0.0;     // root of the mean square, MPa
    double greatest = 0.0;     // greatest residual, MPa
    int count = 0;             // of numbers fitted
    double independent = 0.0;  // points, see "Off"
    std::optional<double> aic, bic;
    bool at_limit = false;  // a number has run to the end of what a card takes
    std::string beyond;     // what it assumes beyond the greatest load, in words
};

// All laws to all tests of a coil at once, in the order of Law. Throws BadRecord: none can be fitted.
std::vector<LawFit> fit_laws(const std::vector<FitInput>& tests);

// The one with the least BIC; laws at a limit are left out while there are others.
const LawFit& best_of(const std::vector<LawFit>& fits);

double stress_of(const LawFit& fit, double modulus, double p);

}  // namespace overbend::tensile
