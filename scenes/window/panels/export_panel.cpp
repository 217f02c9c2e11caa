#include "scenes/window/panels/export_panel.h"

#include <imgui.h>

#include "scenes/window/shared/flow.h"

namespace overbend::window {

using ui::Ui;
using K = sf::Keyboard;

void ExportPanel::begin(const std::string& folder) {
    if (!folder.empty()) folder_ = folder;
}

void ExportPanel::draw(Ui& ui, const PictureRequest& seen, const SharedJob& job) {
    ui.words_before(0.25);
    ui.text("Folder", folder_, "Folder for the files; it is created if needed");
    if (!seen.playback || !job) return ui.words("Nothing to export yet.", Ui::Weight::muted);
    ui.begin_enabled(ui::enabled_if(!exporter_.busy()));
    ui.words("The picture on screen", Ui::Weight::heading);
    Flow flow(ui);
    const auto form = [&](const char* words, FrameForm which, const ui::Key& key, const char* tip) {
        if (flow.button(words, key, tip)) exporter_.frame(seen, which, folder_);
    };
    form("PNG", FrameForm::png, {K::P, true}, "Pixels, for slides and pages");
    form("SVG", FrameForm::svg, {K::G, true}, "Lines and text that can be edited");
    form("PDF", FrameForm::pdf, {K::D, true}, "For print");
    ui.words("The whole job", Ui::Weight::heading);
    Flow whole(ui);
    if (whole.button("Film (MP4)", {K::M, true}, "1920 x 1080, with the colours and springback on screen"))
        exporter_.film(seen, folder_);
    if (whole.button("Report and sheets", {K::E, true},
                     "One page that explains the job (HTML), and sheets for the shop (PDF)"))
        exporter_.report(job, folder_);
    ui.end_enabled();
    draw_progress(ui);
}

void ExportPanel::draw_progress(Ui& ui) {
    ImGui::Spacing();
    if (exporter_.busy()) {
        ui.words(exporter_.progress_words(), Ui::Weight::muted);
        ImGui::ProgressBar(static_cast<float>(exporter_.part_done()), {-1.0f, 0.0f}, "");
        if (ui.button("Cancel export", {K::Delete}, "Unfinished files are removed")) exporter_.cancel();
        return;
    }
    if (exporter_.told().empty()) return;
    ui.words(exporter_.failed() ? "Not written" : "Written", Ui::Weight::heading);
    for (const std::string& line : exporter_.told())
        ui.words(line, exporter_.failed() ? Ui::Weight::alarm : Ui::Weight::plain);
}

}  // namespace overbend::window
