// The panels beside the picture, and the row above them: the case and what is changed in it, what speaks
// against it, its figures, exports; how its run stands.

#pragma once

#include <optional>
#include <string>

#include "render/ui/ui.h"
#include "scenes/window/job/job_work.h"
#include "scenes/window/panels/edit_panel.h"
#include "scenes/window/panels/export_panel.h"
#include "scenes/window/panels/figures_panel.h"
#include "scenes/window/panels/findings_panel.h"
#include "scenes/window/panels/verdict.h"
#include "scenes/window/panels/watched_file.h"
#include "scenes/window/shared/remembered.h"

namespace overbend::window {

class ProcessPanels {
  public:
    // Reads it beside the window; asks first if changes would be lost. What is wrong with it is shown beside
    // what is there, never thrown.
    void open(const std::filesystem::path& file);
    bool unsaved() const { return edits_ && edits_->changed(); }
    // The case's file, and the one that save_beside writes; empty: nothing is open.
    std::filesystem::path file() const { return edits_ ? edits_->file().file : ""; }
    std::filesystem::path file_beside() const;
    // False: it cannot be saved, and the panel of the case says why.
    bool save_beside();
    // Files are being written.
    bool writing() const { return export_panel_.busy(); }
    void stop_writing() { export_panel_.cancel(); }
    // None: nothing is open.
    std::optional<Verdict> verdict(const JobWork& work) const;
    std::string out_of_date(const JobWork& work) const;
    void open_findings() { panel_ = Panel::findings; }
    void recall(const Remembered& remembered);
    void remember(Remembered& remembered) const;
    // trouble: with the picture, in words.
    void draw_row(ui::Ui& ui, JobWork& work, const std::string& trouble, const PictureRequest& seen);
    bool shown() const { return panel_ != Panel::none; }
    // Takes in what other threads have finished, to be asked all the time. True: something seen has changed.
    bool take(JobWork& work);
    bool busy() const { return export_panel_.busy() || opener_.busy(); }
    const char* name() const;  // of the chosen one: each is scrolled by itself
    double width() const;      // in letters' sizes
    // The chosen one; returns the place of a finding that was clicked. seen: what the picture shows.
    std::optional<FindingPlace> draw(ui::Ui& ui, JobWork& work, const PictureRequest& seen);

  private:
    void draw_keys(ui::Ui& ui, JobWork& work, const PictureRequest& seen);
    void read(std::filesystem::path file);
    void draw_files(ui::Ui& ui, JobWork& work);
    bool take_opened(JobWork& work);
    Panel panel_ = Panel::none;
    std::optional<CaseEdits> edits_;  // none: nothing is open
    EditPanel edit_panel_;
    FindingsPanel findings_panel_;
    FiguresPanel figures_panel_;
    ExportPanel export_panel_;
    WatchedFile watched_;
    std::optional<std::filesystem::path> wanted_;  // to be opened, if changes may be lost
    std::optional<FileTrouble> not_opened_;
    Background<ReadForWindow> opener_;
};

}  // namespace overbend::window
