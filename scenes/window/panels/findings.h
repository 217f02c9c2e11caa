// All that is to be said about a job that ran, as a list, each with the instant and the place where it is
// seen.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "render/picture/strip_shape.h"
#include "scenes/window/job/job_run.h"

namespace overbend::window {

struct FindingPlace {
    int step = 0;                      // index into the job's steps
    int state = 0;                     // of that step's recording
    std::optional<picture::Place> at;  // in the press
};

// against: the job is not feasible; caution: it may go wrong; remark: for the operator, or what
// could not be looked at.
enum class FindingWeight { against, caution, remark };

struct Finding {
    FindingWeight weight = FindingWeight::against;
    std::string words;
    std::optional<FindingPlace> place;  // none: of a stroke that was not recorded, or of no stroke at all
};

// Those against it first. Every one of the result's own findings is among them.
std::vector<Finding> findings_of(const RanJob& job);

}  // namespace overbend::window
