// What is to be said about the job, as a list to be clicked.

#pragma once

#include <optional>
#include <vector>

#include "render/ui/ui.h"
#include "scenes/window/panels/findings.h"

namespace overbend::window {

class FindingsPanel {
  public:
    // The place of a finding that was chosen, by a click or the keys.
    std::optional<FindingPlace> draw(ui::Ui& ui, const SharedJob& job);

  private:
    SharedJob job_;  // whose findings these are
    std::vector<Finding> findings_;
    int chosen_ = -1;
};

}  // namespace overbend::window
