// What is to be said about the job, as a list to be clicked.

#pragma once

#include <optional>
#include <vector>

#include "render/ui/ui.h"
#include "scenes/job/run/findings.h"
#include "scenes/window/job/job_run.h"

namespace overbend::window {

// Step, state and place in the press where a finding is seen; none: of no stroke, or one not recorded.
std::optional<FindingPlace> seen_at(const RanJob& job, const Finding& finding);

class FindingsPanel {
  public:
    // The place of a finding that was chosen, by a click or the keys.
    std::optional<FindingPlace> draw(ui::Ui& ui, const SharedJob& job);

  private:
    SharedJob job_;                        // whose findings these are
    std::vector<job::Findings> findings_;  // alike together, the gravest first
    std::vector<std::optional<FindingPlace>> places_;
    int chosen_ = -1;
};

}  // namespace overbend::window
