#include "scenes/job/run/fitted_blank.h"

#include <cmath>

#include "scenes/job/run/legs.h"
#include "sim/strip/place.h"

namespace overbend::job {

namespace {

// Where on the blank the strip has turned half of a bend.
double middle_of_bend(const Blank& blank, const strip::StripState& s, int bend) {
    double low = blank.flat_middle(bend), high = blank.flat_middle(bend + 1);
    const double begin = strip::mid_point(s, low).theta, turn = strip::mid_point(s, high).theta - begin;
    for (int i = 0; i < 60; ++i) {
        const double middle = 0.5 * (low + high);
        const double turned = strip::mid_point(s, middle).theta - begin;
        (std::abs(turned) < 0.5 * std::abs(turn) ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

// The bends that one stroke places together: groups of one or two neighbours, by the first step that makes
// them.
std::vector<bool> with_next(const files::Case& c) {
    std::vector<bool> pair(c.part.bends.size(), false), made(c.part.bends.size(), false);
    for (const files::Step& step : c.steps) {
        const int first = step.bends.front(), last = step.bends.back();
        if (first != last && !made[first] && !made[last]) pair[first] = true;
        made[first] = made[last] = true;
    }
    return pair;
}

}  // namespace

std::vector<double> legs_missing(const files::Case& c, const Blank& used, const strip::StripState& finished) {
    std::vector<double> missing = drawn_legs(c);
    const std::vector<double> made = made_legs(c, used, bent_strip(finished));
    for (std::size_t i = 0; i < missing.size(); ++i) missing[i] -= made[i];
    return missing;
}

Blank fitted_blank(const files::Case& c, const Blank& used, const strip::StripState& finished) {
    const strip::StripState s = as_drawn(finished);
    const std::vector<double> missing = legs_missing(c, used, finished);
    const std::vector<bool> pair = with_next(c);
    Blank fitted = used;
    double shift = 0.0;
    for (std::size_t b = 0; b < pair.size(); ++b) {
        shift += missing[b];
        fitted.bend_line[b] += shift;
        if (!pair[b]) continue;
        // The press lays the strip in by the middle between both lines.
        const double middle = 0.5 * (used.bend_line[b] + used.bend_line[b + 1]) + shift;
        const double half = 0.5 * (middle_of_bend(used, s, static_cast<int>(b) + 1) -
                                   middle_of_bend(used, s, static_cast<int>(b)));
        fitted.bend_line[b] = middle - half;
        fitted.bend_line[++b] = middle + half;
    }
    fitted.length += shift + missing.back();
    return fitted;
}

Blank in_hundredths(Blank blank) {
    const auto hundredth = [](double value) { return std::round(100.0 * value) / 100.0; };
    blank.length = hundredth(blank.length);
    for (double& line : blank.bend_line) line = hundredth(line);
    return blank;
}

}  // namespace overbend::job
