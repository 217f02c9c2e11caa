// How the case stands, in a few words that are seen in every scene.

#pragma once

#include <string>

#include "scenes/window/job/job_work.h"
#include "scenes/window/panels/case_edits.h"
#include "scenes/window/shared/severity_mark.h"

namespace overbend::window {

struct Verdict {
    Standing standing = Standing::open;
    std::string words;  // "Not feasible: 2 problems, 1 caution"
};

// With the draft of the case, which may be one that cannot be run.
Verdict verdict_of(const JobWork& work, const CaseEdits& edits);

// What is to be written over a picture that is not of the case as it is now; empty: it is.
std::string out_of_date_words(const JobWork& work, const CaseEdits& edits);

}  // namespace overbend::window
