// Which tools of a case can make a bend, or two neighbours in one stroke; and why the others cannot.
//
// Looked at are the tools and the bend alone: whether punch and die go together with this strip, and reach
// the angle under load. What the rest of the strip meets is a matter of the order.

#pragma once

#include <string>
#include <vector>

#include "scenes/files/case/case.h"
#include "scenes/job/run/drawing.h"

namespace overbend::job {

struct Misfit {
    files::Step stroke;
    std::string why;
    double miss = 1.0;  // see files::Shortfall
};

// Strokes: these bends, between these tools.
struct Fitting {
    std::vector<files::Step> pairs;
    std::vector<Misfit> misfits;
};

// bends: one, or two neighbours from the left.
Fitting fitting_pairs(const files::Case& c, const Blank& blank, const std::vector<int>& bends);

// "'wedge' with 'block' (face 2)"
std::string pair_words(const files::Case& c, const files::Step& stroke);

// ---- all strokes that a case's tools can make, and the tools that were turned down

// Something that was looked at and turned down.
struct Rejected {
    std::string what;
    std::string why;
    double miss = 1.0;  // see files::Shortfall
};

// For people, the nearest miss first: one line for those that are turned down for one reason, its figures
// aside: the nearest of them, and how many others. Two alike are still told one by one.
std::vector<Rejected> grouped(const std::vector<Rejected>& all);

struct Choices {
    std::vector<files::Step> possible;  // their bends and tools
    std::vector<Rejected> rejected;
    std::vector<int> unserved;  // bends that no tools make
};

Choices choices_of(const files::Case& c, const Blank& blank);

}  // namespace overbend::job
