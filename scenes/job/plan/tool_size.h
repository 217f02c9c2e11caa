// Sizes of tools that are not made yet, set right by how the strip came out between them. The leg between two
// bends of one stroke depends on the tools, not on the blank; the arc of a V bend depends on the nose.
//
// Units  mm, rad.

#pragma once

#include <optional>
#include <vector>

#include "scenes/files/case/case.h"
#include "scenes/job/run/process.h"

namespace overbend::job {

// Tools are made, and read off a drawing, in hundredths of a millimetre.
double hundredth(double value);

// Whether the punch and the die of a step can be made as they are, and go together.
bool can_be_made(const files::Case& c, const files::Step& step);

// What says how far a step's two bends stand apart, along the strip between them: the sloped face of an
// offset pair, the width of a channel's foot. None: the step makes no two bends so, or its tools, with the
// pad below a foot, are not all among those that may be changed.
std::optional<double> pair_size(const files::Case& c, const files::Step& step,
                                const std::vector<int>& own_tools);

// Gives the step's tools another such size: punch, die and pad together, so that the gaps between them stay;
// in hundredths of a millimetre.
// false, and nothing changed, when no such tools can be made.
bool resize_pair(files::Case& c, const files::Step& step, double size);

// Of the arc between the lines of the two flats beside a bend that comes as near to their corner as the
// mid-line does. A bend in a V is no arc: it is sharper in its middle and runs out into the flats.
double radius_as_made(const Blank& blank, const strip::StripState& finished, int bend);

// The value from which no other is further off than need be, each distance times its weight, > 0; 0 of none.
struct Weighed {
    double value = 0.0, weight = 1.0;
};
double least_worst(const std::vector<Weighed>& values);

// Distance from the corner of the flats' lines to the middle of the arc between them, over its radius.
// half_turn: of the bend, rad, 0 to pi / 2.
double sagitta(double half_turn);

// A V punch that may be changed, and how much larger its bends' arcs are drawn than they came out: where they
// differ, so that no arc's middle is further off than need be.
struct NoseFit {
    double nose_radius = 0.0;
    double missing = 0.0;
};
// None: the tool is no V punch, is not to be changed, or no step uses it. The job must be solved.
std::optional<NoseFit> nose_fit(const files::Case& c, const JobResult& job, int tool,
                                const std::vector<int>& own_tools);

// false, and nothing changed, when there is no such punch, or it does not go into a groove that it is used
// with.
bool change_nose(files::Case& c, int tool, double radius);

}  // namespace overbend::job
