// The panels beside the picture, and the row above them: the case and what is changed in it, what speaks
// against it, its figures, exports; how its run stands.

#pragma once

#include <optional>
#include <string>

#include "render/window/ui.h"
#include "scenes/window/edit_panel.h"
#include "scenes/window/export_panel.h"
#include "scenes/window/figures_panel.h"
#include "scenes/window/findings_panel.h"
#include "scenes/window/job_work.h"
#include "scenes/window/remembered.h"
#include "scenes/window/watched_file.h"

namespace overbend::scenes {

enum class Panel { none, edits, findings, figures, exports };

class ProcessPanels {
  public:
    void open(const Case& c);
    void recall(const Remembered& remembered);
    void remember(Remembered& remembered) const;
    void draw_row(render::Ui& ui, JobWork& work, const std::string& trouble);
    bool shown() const { return panel_ != Panel::none; }
    // Takes in what other threads have finished, to be asked all the time. True: something seen has changed.
    bool take();
    bool busy() const { return export_panel_.busy(); }
    const char* name() const;  // of the chosen one: each is scrolled by itself
    double width() const;      // in letters' sizes
    // The chosen one; returns the place of a finding that was clicked. seen: what the picture shows.
    std::optional<FindingPlace> draw(render::Ui& ui, JobWork& work, const Wish& seen);

  private:
    void draw_keys(render::Ui& ui, JobWork& work);
    void draw_reload(render::Ui& ui, JobWork& work);
    void read_again(JobWork& work);
    Panel panel_ = Panel::none;
    std::optional<CaseEdits> edits_;  // none: nothing is open
    EditPanel edit_panel_;
    FindingsPanel findings_panel_;
    FiguresPanel figures_panel_;
    ExportPanel export_panel_;
    WatchedFiles watched_;
    std::string reload_trouble_;
};

}  // namespace overbend::scenes
