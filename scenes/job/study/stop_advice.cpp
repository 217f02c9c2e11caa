#include "scenes/job/study/stop_advice.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "sim/units.h"

namespace overbend::job {

namespace {

// A judged size: where it is drawn, what it may be off, and what a move of each stop does to it.
struct Judged {
    std::size_t size = 0;
    double drawn = 0.0, allowed = 0.0;
    std::vector<double> per_mm;
};

std::vector<Judged> judged_sizes(const HeldStops& held, const std::vector<StudySize>& sizes,
                                 const std::vector<std::vector<double>>& sensitivity) {
    std::vector<Judged> judged;
    // The measures of a part stand in the same order as the sizes that are measured on it.
    for (std::size_t i = 0; i < sizes.size() && i < sensitivity.size(); ++i) {
        if (!sizes[i].judged()) continue;
        Judged j{i, sizes[i].drawn, sizes[i].allowed, sensitivity[i]};
        const bool angle = sizes[i].what == StudySize::What::angle;
        const double sense =
            angle && held.c.part.bends[static_cast<std::size_t>(sizes[i].index)].angle < 0.0 ? -1.0 : 1.0;
        for (double& each : j.per_mm) each *= angle ? sense / degree : 1.0;
        judged.push_back(j);
    }
    return judged;
}

// A sample that is good as far as its sizes are: what each is off, one a judged size.
using Off = std::vector<double>;

bool good_at(const std::vector<Judged>& judged, const Off& off, const std::vector<double>& deeper) {
    for (std::size_t j = 0; j < judged.size(); ++j) {
        double moved = off[j];
        for (std::size_t s = 0; s < deeper.size(); ++s) moved += judged[j].per_mm[s] * deeper[s];
        if (std::abs(moved) > judged[j].allowed + 1e-9) return false;
    }
    return true;
}

std::size_t count_good(const std::vector<Judged>& judged, const std::vector<Off>& samples,
                       const std::vector<double>& deeper) {
    return static_cast<std::size_t>(std::count_if(
        samples.begin(), samples.end(), [&](const Off& off) { return good_at(judged, off, deeper); }));
}

// Means brought to the drawing's, over the tolerances; a step that moves nothing stays.
std::vector<double> centred(const std::vector<Judged>& judged, const std::vector<Off>& samples,
                            std::size_t steps) {
    Eigen::MatrixXd a =
        Eigen::MatrixXd::Zero(static_cast<Eigen::Index>(judged.size()), static_cast<Eigen::Index>(steps));
    Eigen::VectorXd b = Eigen::VectorXd::Zero(a.rows());
    for (Eigen::Index j = 0; j < a.rows(); ++j) {
        const Judged& size = judged[static_cast<std::size_t>(j)];
        for (const Off& off : samples)
            b(j) -= off[static_cast<std::size_t>(j)] / (size.allowed * static_cast<double>(samples.size()));
        for (Eigen::Index s = 0; s < a.cols(); ++s)
            a(j, s) = size.per_mm[static_cast<std::size_t>(s)] / size.allowed;
    }
    const Eigen::VectorXd x = a.completeOrthogonalDecomposition().solve(b);
    return {x.data(), x.data() + x.size()};
}

// One stop after the other, by smaller and smaller moves, while more are good.
void improve(const std::vector<Judged>& judged, const std::vector<Off>& samples, std::vector<double>& deeper,
             std::size_t& good) {
    for (const double move : {0.05, 0.02, 0.01, 0.005, 0.002}) {
        bool better = true;
        for (int round = 0; better && round < 20; ++round) {
            better = false;
            for (double& stop : deeper)
                for (const double way : {move, -move}) {
                    const double before = stop;
                    stop = before + way;
                    const std::size_t now = count_good(judged, samples, deeper);
                    if (now > good)
                        good = now, better = true;
                    else
                        stop = before;
                }
        }
    }
}

}  // namespace

StopAdvice advise_stops(const StudyPlan& plan, const HeldStops& held, const std::vector<StudySize>& sizes,
                        const std::vector<StudyRow>& rows,
                        const std::vector<std::vector<double>>& sensitivity) {
    const std::vector<Judged> judged = judged_sizes(held, sizes, sensitivity);
    const std::vector<const StudyRow*> all = sample_rows(plan, rows);
    std::vector<Off> samples;
    double good = 0.0;
    for (const StudyRow* row : all) {
        good += row->good ? 1.0 : 0.0;
        if (!row->solved) continue;
        Off off;
        for (const Judged& j : judged) off.push_back(row->sizes[j.size] - j.drawn);
        // A part that is bad though its sizes are within stays bad, wherever the stops are.
        if (row->good || !good_at(judged, off, std::vector<double>(held.c.steps.size(), 0.0)))
            samples.push_back(std::move(off));
    }
    StopAdvice advice;
    advice.now = advice.then = share_of(good, static_cast<double>(all.size()));
    advice.deeper.assign(held.c.steps.size(), 0.0);
    if (samples.empty() || judged.empty()) return advice;
    std::size_t best = count_good(judged, samples, advice.deeper);
    const std::vector<double> middle = centred(judged, samples, advice.deeper.size());
    std::vector<double> from_middle = middle;
    std::size_t found = count_good(judged, samples, from_middle);
    improve(judged, samples, from_middle, found);
    improve(judged, samples, advice.deeper, best);
    if (found > best) best = found, advice.deeper = from_middle;
    advice.then = share_of(static_cast<double>(best), static_cast<double>(all.size()));
    return advice;
}

}  // namespace overbend::job
