// One or several tensile tests of a coil, read together: the whole way from records to laws.
//
//   1. each record is mended, and its elastic part found
//   2. one modulus for the coil: the mean of those that are measured well, else the nominal one
//   3. each record is read by that modulus; figures and laws of all together
//
// Off of a coil's figures: of the tests' own, and what they differ among themselves (two deviations of the
// mean).
//
// Units  MPa; strains without unit.

#pragma once

#include "sim/tensile/fit_laws.h"
#include "sim/tensile/mend.h"

namespace overbend::tensile {

struct Prepared {
    Mended mended;
    Elastic elastic;
};

// Throws BadRecord.
Prepared prepare(const Record& raw);

struct TestResult {
    Prepared from;
    Modulus modulus;
    Record specimen;  // elastic line through the origin, without the machine's stretch
    Figures figures;
    TrueCurve curve;
};

struct Coil {
    Figure modulus;
    bool modulus_measured = false;
    Nominal nominal;
    std::vector<TestResult> tests;
    Figure proof, strength, uniform;
    std::optional<Figure> upper_yield, lower_yield, yield_elongation, elongation, r_value;
    double strength_differs = 0.0;  // of Rm between tests, two deviations, as a part; 0 for one test
    std::vector<TrueCurve> level;   // of the tests, brought to one level, as the laws are fitted
    std::vector<LawFit> fits;       // in the order of Law
};

// BadRecord of one of several tests, with its place among them.
struct BadTest : BadRecord {
    BadTest(std::size_t test_, const BadRecord& bad) : BadRecord(bad), test(test_) {}
    std::size_t test = 0;
};

// Throws BadTest; BadRecord where the modulus is not known or no law fits.
Coil read_coil(std::vector<Prepared> tests, const std::optional<Nominal>& nominal);

}  // namespace overbend::tensile
