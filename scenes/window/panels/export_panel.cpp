#include "scenes/window/panels/export_panel.h"

#include <imgui.h>

#include "scenes/window/shared/flow.h"

namespace overbend::window {

using ui::Ui;
using K = sf::Keyboard;

struct ExportPanel::Choice {
    const char *heading, *tip, *words;
    ui::Key key;
    std::optional<FrameForm> frame;  // else the film, or the report
    bool film = false;
};

const std::vector<ExportPanel::Choice>& ExportPanel::choices() {
    static const char *const picture = "The picture on screen", *const whole = "The whole job";
    static const std::vector<Choice> all = {
        {picture, "Pixels, for slides and pages", "PNG", {K::P, true}, FrameForm::png},
        {picture, "Lines and text that can be edited", "SVG", {K::G, true}, FrameForm::svg},
        {picture, "For print", "PDF", {K::D, true}, FrameForm::pdf},
        {whole,
         "1920 x 1080, with the colours and springback on screen",
         "Film (MP4)",
         {K::M, true},
         {},
         true},
        {whole,
         "One page that explains the job (HTML), and sheets for the shop (PDF)",
         "Report and sheets",
         {K::E, true},
         {}}};
    return all;
}

void ExportPanel::write(const Choice& c, const PictureRequest& seen, const SharedJob& job) {
    if (c.frame)
        exporter_.frame(seen, *c.frame, folder_);
    else if (c.film)
        exporter_.film(seen, folder_);
    else
        exporter_.report(job, folder_);
}

void ExportPanel::begin(const std::string& folder) {
    if (!folder.empty()) folder_ = folder;
}

void ExportPanel::draw(Ui& ui, const PictureRequest& seen, const SharedJob& job) {
    ui.words_before(0.25);
    ui.text("Folder", folder_, "Folder for the files; it is created if needed");
    if (!seen.playback || !job) return ui.words("Nothing to export yet.", Ui::Weight::muted);
    ui.begin_enabled(ui::enabled_if(!exporter_.busy()));
    std::string heading;
    Flow flow(ui);
    for (const Choice& c : choices()) {
        if (heading != c.heading) {
            ui.words(c.heading, Ui::Weight::heading);
            heading = c.heading;
            flow = Flow(ui);
        }
        if (flow.button(c.words, c.key, c.tip)) write(c, seen, job);
    }
    ui.end_enabled();
    draw_progress(ui);
}

bool ExportPanel::keys(Ui& ui, const PictureRequest& seen, const SharedJob& job) {
    bool used = false;
    for (const Choice& c : choices()) {
        if (!ui.key(c.words, c.key) || !seen.playback || !job || exporter_.busy()) continue;
        write(c, seen, job);
        used = true;
    }
    return used;
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
