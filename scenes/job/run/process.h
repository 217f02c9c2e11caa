// A case run from blank to finished part: one scene a step, the strip carrying its history from each to the
// next.
//
// Units  mm, rad, N per mm of strip width unless a name says otherwise.

#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "scenes/files/case/case.h"
#include "scenes/job/run/drawing.h"
#include "scenes/job/run/findings.h"
#include "scenes/job/run/measures.h"
#include "scenes/job/run/profile.h"
#include "scenes/job/run/profile_fit.h"
#include "sim/clearance/access.h"
#include "sim/clearance/least_distance.h"
#include "sim/stroke/stroke.h"

namespace overbend::job {

struct BendResult {
    int bend = 0;          // index into the part's bends
    double drawing = 0.0;  // signed bend angle as drawn
    double loaded = 0.0;   // signed as drawn, under the punch
    double free = 0.0;     // after this step
    BendShape shape_loaded, shape_free;
    double springback() const;  // positive opens the bend
};

// A stretch of states in which the strip away from the forming zone overlaps a tool.
struct Interference {
    int first_state = 0, last_state = 0;
    clearance::Closest deepest;
};

// What a finished angle may be off from one coil to the next, and by the mechanics itself; rad, either way.
// See spread.h.
struct AngleSpread {
    double strength = 0.0, thickness = 0.0, friction = 0.0;
    std::optional<double> mechanics;  // not known: the whole is without it

    double whole() const;
};

struct StepResult {
    std::string name;
    stroke::StrokeResult stroke;
    std::vector<BendResult> bends;              // empty when the stroke was not solved
    std::vector<clearance::Closest> clearance;  // one a recorded state
    clearance::Closest least;
    std::vector<Interference> interferences;
    clearance::Way way_in = clearance::Way::in_the_plane, way_off = clearance::Way::in_the_plane;
    double ram_stop = 0.0;  // mm, height of the punch over the die at the stop: what a press holds
    double gauge = 0.0;     // mm, from the punch's axis to the gauge's face; 0 without one
    double wall_ms = 0.0;   // printed, never written
};

struct JobResult {
    Blank blank;
    std::vector<StepResult> steps;       // ends after a step that was not solved
    std::vector<double> finished_angle;  // of every bend in the end, signed as drawn; empty when not finished
    ProfileFit profile;                  // laid over the drawing; empty when not finished
    std::vector<MeasuredSize> measures;  // of the finished part beside the drawing; empty when not finished
    std::vector<AngleSpread> spread;     // of every bend; empty when not known
    double mass_g = 0.0;                 // of the blank less its cut-outs; 0 when the card has no density
    Blank fitted;                        // would have given the drawing's legs; of length 0 when not finished
    bool solved = false;                 // every stroke was
    Findings findings;                   // all of them; the shop's too once it was looked at

    bool feasible() const { return solved && !stops(findings); }
};

// The verdict in a few words, the same wherever it stands: "Feasible: no problems found.", "Not feasible: 2
// problems."
std::string verdict_words(const JobResult& job);

struct ProcessOptions {
    bool record = true;  // all states, for pictures; false: loaded and free alone
    std::function<void(int step, double travel)> progress;
    // Where the ram stops, one a step, as StepResult::ram_stop: whatever the strip, it goes there. Nothing,
    // or none at all: as the case says.
    std::vector<std::optional<double>> ram_stop;
    const files::Case* drawn = nullptr;  // whose drawing the part is judged by; null: the case's own
};

// A hit of a step as a finding.
Finding finding_of(const StepResult& result, int step, const Interference& hit);

// While it is pressed, the state with the travel nearest to that one; -1: none is recorded.
int state_at(const stroke::Recording& recording, double travel);

// On the blank that the case, which has steps, states; where it states none, on the one that gives the
// drawing's legs: the job is run on the blank by DIN 6935 first, and once more on the blank fitted to what
// came out. A length that is stated without bend lines is kept.
JobResult run_process(const files::Case& c, const ProcessOptions& options);

}  // namespace overbend::job
