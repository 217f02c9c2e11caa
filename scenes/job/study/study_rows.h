// Rows of a study: a case run at each, judged as every job is, on all cores.

#pragma once

#include <functional>

#include "scenes/job/study/held_stops.h"

namespace overbend::job {

// What a row measures, in turn; the same for all rows of a study.
struct StudySize {
    enum class What { angle, springback, leg, radius, profile, force } what = What::angle;
    int index = 0;         // of its bend, flat or step
    std::string name;      // for people: "angle of 'lip'"
    std::string key;       // of the rows' file: "angle_deg of 'lip'"
    std::string unit;      // "deg", "mm", "kN"
    double drawn = 0.0;    // in this unit; angles as their magnitude
    double allowed = 0.0;  // either way; 0: not judged
    bool judged() const { return allowed > 0.0; }
};
std::vector<StudySize> study_sizes(const HeldStops& held);

struct StudyRow {
    std::uint64_t number = 0;
    std::vector<double> values;  // one a column
    bool solved = false, good = false;
    std::vector<double> sizes;  // one a size; empty: not solved
    std::string why;            // not good: the first reason
};

// Row by its number.
StudyRow run_row(const StudyPlan& plan, const HeldStops& held, std::uint64_t number);

// These rows on all cores. take: one at a time, in any order, from any thread; false stops after the rows
// under way.
void run_rows(const StudyPlan& plan, const HeldStops& held, const std::vector<std::uint64_t>& numbers,
              const std::function<bool(StudyRow)>& take);

}  // namespace overbend::job
