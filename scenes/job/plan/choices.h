// All strokes that a case's tools can make, and the tools that were turned down.

#pragma once

#include <string>
#include <vector>

#include "scenes/job/plan/ways.h"

namespace overbend::job {

// Something that was looked at and turned down.
struct Rejected {
    std::string what;
    std::string why;
};

struct Choices {
    std::vector<files::Step> possible;  // their bends and tools
    std::vector<Rejected> rejected;
    std::vector<int> unserved;  // bends that no tools make
};

Choices choices_of(const files::Case& c, const Blank& blank);

}  // namespace overbend::job
