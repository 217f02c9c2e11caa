// Which tools of a case can make a bend, or two neighbours in one stroke; and why the others cannot.
//
// Looked at are the tools and the bend alone: whether punch and die go together with this strip, and reach
// the angle under load. What the rest of the strip meets is a matter of the order.

#pragma once

#include <string>
#include <vector>

#include "scenes/files/case/case.h"
#include "scenes/job/plan/tool_pair.h"
#include "scenes/job/run/drawing.h"

namespace overbend::job {

struct Misfit {
    ToolPair pair;
    std::string why;
};

struct Fitting {
    std::vector<ToolPair> pairs;
    std::vector<Misfit> misfits;
};

// bends: one, or two neighbours from the left. Two are made by an offset pair when their senses differ, by a
// channel pair when they agree, and only when their angles are the same.
Fitting fitting_pairs(const files::Case& c, const Blank& blank, const std::vector<int>& bends);

// "'wedge' with 'block' (face 2)"
std::string pair_words(const files::Case& c, const ToolPair& pair);

// How far apart two parallel flats are, mid-line to mid-line, that a pair of opposite bends joins, mm.
double drawn_step(const files::Case& c, int left_bend);

}  // namespace overbend::job
