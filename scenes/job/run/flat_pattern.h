// The flat pattern of a part: bend lines and bend allowances, by the mechanics, by DIN
// 6935 and by the handbook.
//
// An allowance is the blank that goes into a bend of the drawing, so that flats and allowances together are
// the blank. By the mechanics it follows from the finished strip: what the bend takes of the drawing's legs
// (legs.h), less what the made bend takes beyond the blank that went into it. Thinning, the stretch of the
// mid-line and the true radius are in it; where a bend comes out sharper than it is drawn, the corner holds
// more blank than its arc is long.
//
// Units  mm, rad.

#pragma once

#include <vector>

#include "scenes/files/case/case.h"
#include "scenes/job/run/job_rules.h"

namespace overbend::job {

struct FlatBend {
    int bend = 0;              // index into the part's bends
    double at = 0.0;           // its line, from the blank's left end
    double half_arc = 0.0;     // half of its allowance, as the blank has it
    double din = 0.0;          // allowances
    double handbook = 0.0;     // straight line for the card's class of hardness
    double mechanics = 0.0;    // 0: not simulated; flats and these are the fitted blank
    double made_radius = 0.0;  // inside radius as it comes out; 0: not simulated
    double mid_stretch = 0.0;  // of the mid-line where it is bent most, 0.01 for 1 per cent
};

struct FlatCutout : NearestBend {
    bool too_near() const { return edge_to_bend < least - 1e-9; }
};

enum class BendLines { by_rule, of_the_case, fitted };  // DIN 6935; as given; by the simulated strokes

struct FlatPattern {
    Blank blank;  // that the job was simulated with, or by DIN 6935 when it was not
    BendLines lines = BendLines::by_rule;
    bool simulated = false;
    double mass_g = 0.0;
    double din = 0.0, handbook = 0.0, mechanics = 0.0;  // lengths in total; mechanics 0 when not simulated
    std::vector<FlatBend> bends;
    std::vector<FlatCutout> cutouts;  // one a cut-out of the case
    Findings rules;                   // on bends and cut-outs, and on steps where there are any
    JobResult job;                    // the last run; without steps empty
};

// Runs the case on its blank, see run_process. A case without steps is not simulated; nor is one whose run
// was not solved: then the job says why.
FlatPattern flat_pattern(const files::Case& c, const ProcessOptions& options);

// Of a job that was run already, with the blank that it was run with.
FlatPattern pattern_of(const files::Case& c, JobResult job);

// The case with another blank: its length and bend lines.
files::Case with_blank(files::Case c, const Blank& blank);

}  // namespace overbend::job
