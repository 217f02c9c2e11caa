// Least squares of a law's free numbers (law_model.h) over the points of one or several tests.
//
// Units  MPa; p without unit.

#pragma once

#include <Eigen/Core>
#include <optional>
#include <vector>

#include "sim/tensile/law_model.h"
#include "sim/tensile/true_curve.h"

namespace overbend::tensile {

// A test as it is fitted: with the modulus as it is, and at the ends of what it may be.
struct FitInput {
    TrueCurve curve;
    double modulus = 0.0;
    std::optional<double> level;     // stress while it yields, from p = 0 on; in the table alone
    std::vector<TrueCurve> shifted;  // the same curve with the modulus at either end; two or none
};

struct Points {
    Eigen::VectorXd p, stress;
    double modulus = 0.0;
};
Points pooled(const std::vector<const TrueCurve*>& curves, double modulus);

// The tests with their stresses brought to the coil's mean, over the strains that all have.
std::vector<FitInput> levelled(const std::vector<FitInput>& tests);

struct Fitted {
    Eigen::VectorXd free;
    double squares = 1e300;  // MPa^2; 1e300: it was not found
};
// By Levenberg and Marquardt's method, from several starts; law: one of the first four.
Fitted fit(Law law, const Points& points);

Eigen::VectorXd left_over(Law law, const Eigen::VectorXd& free,
                          const Points& points);  // points less law, MPa
// How alike neighbouring residuals are, 0 to nearly 1; less than chance shows is 0.
double likeness(const Eigen::VectorXd& left);
// So many independent points they stand for: n (1 - rho) / (1 + rho).
double independent(const Eigen::VectorXd& left);

// Variances of the free numbers, see "Off" in fit_laws.h. level: the tests, levelled; points: theirs, pooled.
Eigen::VectorXd variances(Law law, const Fitted& found, const Points& points,
                          const std::vector<FitInput>& level, const std::vector<FitInput>& tests);

}  // namespace overbend::tensile
