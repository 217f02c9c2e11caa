#include "sim/tensile/least_squares.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <unsupported/Eigen/NonLinearOptimization>

namespace overbend::tensile {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

namespace {

// As Eigen's method of Levenberg and Marquardt calls it; stresses as parts of the greatest.
struct Residuals {
    const Points& points;
    Law law;
    double unit;

    int inputs() const { return free_numbers(law); }
    int values() const { return static_cast<int>(points.p.size()); }
    int operator()(const VectorXd& free, VectorXd& left) const {
        for (Index i = 0; i < points.p.size(); ++i)
            left[i] = (model_point(law, free, points.modulus, points.p[i]).stress - points.stress[i]) / unit;
        return left.allFinite() ? 0 : -1;
    }
    int df(const VectorXd& free, MatrixXd& slopes) const {
        for (Index i = 0; i < points.p.size(); ++i)
            slopes.row(i) = model_point(law, free, points.modulus, points.p[i]).slopes / unit;
        return 0;
    }
};

// Starts: early and late hardening, little and much.
std::vector<VectorXd> starts_of(Law law, const Points& points) {
    const double low = points.stress.minCoeff(), high = points.stress.maxCoeff();
    const double rise = std::max(high - low, 0.01 * high);
    std::vector<VectorXd> starts;
    const auto add = [&](std::vector<double> v) {
        starts.push_back(VectorXd::Map(v.data(), static_cast<Index>(v.size())).array().log());
    };
    if (law == Law::swift)
        for (const double n : {0.05, 0.2, 0.5})
            for (const double e0 : {1e-3, 1e-2, 5e-2})
                add({high / std::pow(e0 + points.p.maxCoeff(), n), e0, n});
    if (law == Law::hollomon)
        for (const double n : {0.05, 0.15, 0.3, 0.5}) add({high / std::pow(points.p.maxCoeff(), n), n});
    if (law == Law::voce)
        for (const double times : {1.0, 3.0, 10.0})
            add({0.95 * low, 1.1 * rise, times / points.p.maxCoeff()});
    if (law == Law::linear) add({low, rise / points.p.maxCoeff()});
    return starts;
}

double stress_at(const TrueCurve& curve, double p) {
    std::size_t i = 1;
    while (i + 1 < curve.p.size() && curve.p[i] < p) ++i;
    const double run = curve.p[i] - curve.p[i - 1];
    const double part = run > 0.0 ? (p - curve.p[i - 1]) / run : 0.0;
    return curve.stress[i - 1] + part * (curve.stress[i] - curve.stress[i - 1]);
}

}  // namespace

Points pooled(const std::vector<const TrueCurve*>& curves, double modulus) {
    std::vector<std::pair<double, double>> all;
    for (const TrueCurve* c : curves)
        for (std::size_t i = 0; i < c->p.size(); ++i) all.emplace_back(c->p[i], c->stress[i]);
    Points points;
    points.modulus = modulus;
    points.p.resize(static_cast<Index>(all.size()));
    points.stress.resize(points.p.size());
    for (Index i = 0; i < points.p.size(); ++i) points.p[i] = all[i].first, points.stress[i] = all[i].second;
    return points;
}

Fitted fit(Law law, const Points& points) {
    Fitted best;
    const Residuals residuals{points, law, points.stress.maxCoeff()};
    for (VectorXd free : starts_of(law, points)) {
        Residuals functor = residuals;
        Eigen::LevenbergMarquardt<Residuals> method(functor);
        method.parameters.maxfev = 400;
        method.parameters.xtol = method.parameters.ftol = 1e-12;
        method.minimize(free);
        VectorXd left(points.p.size());
        if (!free.allFinite() || residuals(free, left) != 0) continue;
        const double squares = left.squaredNorm() * residuals.unit * residuals.unit;
        if (squares < best.squares) best = {free, squares};
    }
    return best;
}

double likeness(const VectorXd& left) {
    const Index n = left.size();
    const double own = left.squaredNorm();
    if (n < 10 || own <= 0.0) return 0.0;
    const double beside = left.head(n - 1).dot(left.tail(n - 1));
    const double rho = beside / own;
    // Less than independent points show by chance is none.
    return rho < 2.0 / std::sqrt(double(n)) ? 0.0 : std::min(rho, 0.95);
}

VectorXd left_over(Law law, const VectorXd& free, const Points& points) {
    VectorXd left(points.p.size());
    for (Index i = 0; i < left.size(); ++i)
        left[i] = points.stress[i] - model_point(law, free, points.modulus, points.p[i]).stress;
    return left;
}

double independent(const VectorXd& left) {
    const double rho = likeness(left);
    return double(left.size()) * (1.0 - rho) / (1.0 + rho);
}

std::vector<FitInput> levelled(const std::vector<FitInput>& tests) {
    std::vector<FitInput> level = tests;
    double from = 0.0, to = 1e300;
    for (const FitInput& t : tests) from = std::max(from, t.curve.from), to = std::min(to, t.curve.to);
    if (tests.size() < 2 || !(to > from)) return level;
    std::vector<double> means;
    double whole = 0.0;
    for (const FitInput& t : tests) {
        double mean = 0.0;
        constexpr int places = 40;
        for (int i = 0; i <= places; ++i)
            mean += stress_at(t.curve, from + (to - from) * i / places) / (places + 1);
        means.push_back(mean);
        whole += mean / double(tests.size());
    }
    for (std::size_t t = 0; t < level.size(); ++t) {
        const double times = whole / means[t];
        for (double& s : level[t].curve.stress) s *= times;
        for (TrueCurve& other : level[t].shifted)
            for (double& s : other.stress) s *= times;
        if (level[t].level) *level[t].level *= times;
    }
    return level;
}

VectorXd variances(Law law, const Fitted& found, const Points& points, const std::vector<FitInput>& level,
                   const std::vector<FitInput>& tests) {
    const int k = free_numbers(law);
    MatrixXd slopes(points.p.size(), k);
    for (Index i = 0; i < points.p.size(); ++i)
        slopes.row(i) = model_point(law, found.free, points.modulus, points.p[i]).slopes;
    const double rho = likeness(left_over(law, found.free, points));
    const double per_point = found.squares / std::max(1.0, double(points.p.size()) - k);
    const Eigen::ColPivHouseholderQR<MatrixXd> qr(slopes);
    if (qr.rank() < k) return VectorXd::Constant(k, 1e6);
    const MatrixXd inverse = (slopes.transpose() * slopes).fullPivLu().inverse();
    VectorXd v = inverse.diagonal() * per_point * (1.0 + rho) / (1.0 - rho);

    // The modulus at either end of what it may be, two deviations off.
    for (std::size_t side = 0; !level.front().shifted.empty() && side < 2; ++side) {
        std::vector<const TrueCurve*> curves;
        for (const FitInput& t : level) curves.push_back(&t.shifted[side]);
        const Fitted other = fit(law, pooled(curves, points.modulus));
        if (other.squares < 1e300) v += 0.5 * (0.5 * (other.free - found.free)).cwiseAbs2();
    }
    if (tests.size() < 2) return v;
    VectorXd mean = VectorXd::Zero(k), squares = VectorXd::Zero(k);
    for (const FitInput& t : tests) {
        const Fitted one = fit(law, pooled({&t.curve}, points.modulus));
        if (one.squares >= 1e300) return v;
        mean += one.free, squares += one.free.cwiseAbs2();
    }
    const double m = double(tests.size());
    mean /= m;
    const VectorXd among = ((squares / m - mean.cwiseAbs2()) * (m / (m - 1.0))).cwiseMax(0.0) / m;
    return v + among;
}

}  // namespace overbend::tensile
