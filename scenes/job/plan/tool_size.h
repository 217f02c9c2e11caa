// Sizes of tools that are not made yet, set right by how the strip came out between them. The leg between two
// bends of one stroke depends on the tools, not on the blank; the arc of a V bend depends on the nose.
//
// Units  mm, rad.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "scenes/files/case/case.h"
#include "scenes/job/run/process.h"

namespace overbend::job {

// Gives the step's tools `missing` (rad, > 0) more overbend and a little on top, when they are among those
// that may be changed: formed tools press no further than they close. What was done, in words; empty when
// nothing can be.
std::string add_overbend(files::Case& c, const files::Step& step, double missing,
                         const std::vector<int>& own_tools);

// What says how far a step's two bends stand apart, see WorkKind::pair_size. None: the step makes no two
// bends so, or its tools, with the pad below a foot, are not all among those that may be changed.
std::optional<double> pair_size(const files::Case& c, const files::Step& step,
                                const std::vector<int>& own_tools);

// Gives the step's tools another such size: punch, die and pad together, so that the gaps between them stay;
// in hundredths of a millimetre.
// false, and nothing changed, when no such tools can be made.
bool resize_pair(files::Case& c, const files::Step& step, double size);

// The value from which no other is further off than need be, each distance times its weight, > 0; 0 of none.
struct Weighed {
    double value = 0.0, weight = 1.0;
};
double least_worst(const std::vector<Weighed>& values);

// A nose that may be changed, and how much larger its bends' inside radii are drawn than they came out: where
// they differ, so that none is further off, over its tolerance, than need be.
struct NoseFit {
    double nose_radius = 0.0;
    double missing = 0.0;
};
// None: the tool has no nose, is not to be changed, or no step uses it. The job must be solved.
std::optional<NoseFit> nose_fit(const files::Case& c, const JobResult& job, int tool,
                                const std::vector<int>& own_tools);

// false, and nothing changed, when there is no such punch, or it does not go into a groove that it is used
// with. The tool has a nose.
bool change_nose(files::Case& c, int tool, double radius);

}  // namespace overbend::job
