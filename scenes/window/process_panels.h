// The panels beside the picture, and the row above them: the case and what is changed in it, what speaks
// against it, its figures, exports; how its run stands.

#pragma once

#include <optional>
#include <string>

#include "render/window/ui.h"
#include "scenes/window/job_work.h"

namespace overbend::scenes {

struct FindingPlace {
    int step = 0;
    int state = 0;
    std::optional<render::Place> at;
};

enum class Panel { none, edits, findings, figures, exports };

class ProcessPanels {
  public:
    void open(const Case& c);
    void draw_row(render::Ui& ui, JobWork& work, const std::string& trouble);
    bool shown() const { return panel_ != Panel::none; }
    // The chosen one; returns the place of a finding that was clicked.
    std::optional<FindingPlace> draw(render::Ui& ui, JobWork& work);

  private:
    Panel panel_ = Panel::none;
    Case case_;
};

}  // namespace overbend::scenes
