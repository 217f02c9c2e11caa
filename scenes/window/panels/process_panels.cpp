#include "scenes/window/panels/process_panels.h"

#include <imgui.h>

#include "scenes/window/panels/reload_bar.h"
#include "scenes/window/shared/flow.h"
#include "sim/words.h"

namespace overbend::window {

namespace {

using ui::Ui;
using K = sf::Keyboard;

// What went wrong with the run, in a few words; the verdict stands in the window's first row.
void draw_state(Ui& ui, const JobWork& work, const std::string& trouble) {
    const auto alarm = [&](const std::string& words) { ui.words_beside(words, Ui::Weight::alarm); };
    if (!trouble.empty()) return alarm(trouble);
    if (!work.trouble().empty()) return alarm(work.trouble());
    if (work.behind()) alarm("stopped: the picture shows the case before the change");
}

}  // namespace

void ProcessPanels::open(const std::filesystem::path& file) {
    if (unsaved())
        wanted_ = file;
    else
        read(file);
}

void ProcessPanels::read(std::filesystem::path file) {
    opener_.start([file = std::move(file)](const Wanted&) { return read_for_window(file); });
}

bool ProcessPanels::take_opened(JobWork& work) {
    const std::optional<ReadForWindow> read = opener_.take();
    if (!read) return false;
    not_opened_ = read->trouble;
    if (!read->c) return true;
    edits_.emplace(*read->c);
    edit_panel_.begin_anew();
    watched_.watch(*read->c);
    work.run_another(*read->c);
    return true;
}

std::filesystem::path ProcessPanels::file_beside() const {
    return edits_ ? name_for_changed(edits_->file().file) : std::filesystem::path();
}

bool ProcessPanels::save_beside() {
    if (!edits_) return false;
    const bool saved = edit_panel_.save_beside(*edits_);
    if (saved && edit_panel_.take_saved()) watched_.watch(edits_->file());
    if (!saved) panel_ = Panel::edits;
    return saved;
}

std::optional<Verdict> ProcessPanels::verdict(const JobWork& work) const {
    if (!edits_) return {};
    return verdict_of(work, *edits_);
}

std::string ProcessPanels::out_of_date(const JobWork& work) const {
    return edits_ ? out_of_date_words(work, *edits_) : "";
}

void ProcessPanels::draw_keys(Ui& ui, JobWork& work, const PictureRequest& seen) {
    if (panel_ != Panel::exports && export_panel_.keys(ui, seen, work.job())) panel_ = Panel::exports;
    if (!edits_ || panel_ == Panel::edits) return;
    if (EditPanel::keys(ui, *edits_)) work.run(edits_->now());
    if (!ui.key("Save...", {K::S, true})) return;
    panel_ = Panel::edits;
    edit_panel_.begin_saving(*edits_);
}

void ProcessPanels::draw_files(Ui& ui, JobWork& work) {
    // Once they are saved nothing is in its way.
    if (wanted_ && !unsaved()) {
        read(*wanted_);
        wanted_.reset();
    }
    if (wanted_) {
        const std::string name = wanted_->filename().string();
        const std::optional<UnsavedAnswer> answer =
            draw_unsaved(ui, "The case has unsaved changes; " + name + " will replace it.",
                         "Open without saving", "Keep this case", {K::O, true});
        if (answer == UnsavedAnswer::proceed) read(*wanted_);
        if (answer) wanted_.reset();
        return;
    }
    if (not_opened_) {
        if (draw_not_opened(ui, *not_opened_)) not_opened_.reset();
        return;
    }
    const std::optional<files::Case> on_disk = draw_reload_bar(ui, watched_);
    if (!on_disk) return;
    // Changes made here stay in the undo list.
    if (edits_->read_again(*on_disk)) work.run(edits_->now());
    watched_.watch(*on_disk);
}

void ProcessPanels::draw_row(Ui& ui, JobWork& work, const std::string& trouble, const PictureRequest& seen) {
    draw_keys(ui, work, seen);
    draw_files(ui, work);
    Flow flow(ui);
    const auto panel = [&](const char* words, Panel which, K::Key key, const char* tip) {
        if (flow.toggle(words, ui::chosen_if(panel_ == which), {key}, tip))
            panel_ = panel_ == which ? Panel::none : which;
    };
    panel("Case", Panel::edits, K::Num1, "Change strip, strokes and tools");
    panel("Findings", Panel::findings, K::Num2, "Problems, cautions and remarks");
    panel("Figures", Panel::figures, K::Num3, "Strokes, blank, press, tools and cost");
    panel("Export", Panel::exports, K::Num4, "Picture, film and report as files");
    if (work.running()) {
        if (flow.button("Cancel", {K::R}, "Stops the run; the picture stays")) work.cancel();
        ImGui::SameLine();
        ImGui::ProgressBar(static_cast<float>(work.part_done()), {9.0f * ImGui::GetFontSize(), 0.0f}, "");
        return ui.words_beside(work.progress_words(), Ui::Weight::muted);
    }
    if (flow.button("Run", {K::R}, "Runs the job again", ui::enabled_if(work.job() || work.behind())))
        work.run(edits_->now());
    draw_state(ui, work, trouble);
}

void ProcessPanels::recall(const Remembered& remembered) {
    panel_ = remembered.panel;
    export_panel_.begin(remembered.export_folder);
}

void ProcessPanels::remember(Remembered& remembered) const {
    remembered.panel = panel_;
    remembered.export_folder = export_panel_.folder();
    // Saved under another name it is that file which is opened the next time.
    std::error_code ignored;  // the working folder may be gone
    if (edits_) remembered.last_case = std::filesystem::absolute(edits_->file().file, ignored).string();
}

bool ProcessPanels::take(JobWork& work) {
    const bool opened = take_opened(work), changed = watched_.look();
    return export_panel_.take() || opened || changed;
}

const char* ProcessPanels::name() const {
    static const char* const names[] = {"no panel", "case", "findings", "figures", "exports"};
    return names[static_cast<std::size_t>(panel_)];
}

double ProcessPanels::width() const {
    return panel_ == Panel::figures ? 26.0 : 22.0;
}

std::optional<FindingPlace> ProcessPanels::draw(Ui& ui, JobWork& work, const PictureRequest& seen) {
    if (panel_ == Panel::exports) export_panel_.draw(ui, seen, work.job());
    if (panel_ == Panel::figures) figures_panel_.draw(ui, work.job(), seen.theme);
    if (panel_ == Panel::findings) return findings_panel_.draw(ui, work.job());
    if (panel_ != Panel::edits || !edits_) return {};
    if (edit_panel_.draw(ui, *edits_)) work.run(edits_->now());
    if (edit_panel_.take_saved()) watched_.watch(edits_->file());
    return {};
}

}  // namespace overbend::window
