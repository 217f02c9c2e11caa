#include "scenes/window/panels/reload_bar.h"

#include <imgui.h>

#include "render/picture/numbers.h"
#include "sim/words.h"

namespace overbend::window {

namespace {

using ui::Ui;

const ui::Key reload_key{sf::Keyboard::R, true}, leave_key{sf::Keyboard::L, true};

// "case.toml and mild.toml were changed on disk"
std::string changed_words(const FileNews& news) {
    std::vector<std::string> names;
    for (const std::filesystem::path& file : news.changed) names.push_back(file.filename().string());
    return picture::listed(names) + (news.changed.size() == 1 ? " was" : " were") + " changed on disk";
}

// Over the width that is there.
void draw_trouble(Ui& ui, const FileTrouble& trouble) {
    ui.words(
        trouble.place_words() + ": " + trouble.wrong + (trouble.right.empty() ? "" : "; " + trouble.right),
        Ui::Weight::alarm);
    if (trouble.text.empty()) return;
    ImGui::Indent();
    ui.words(words("%d:  ", trouble.line) + trouble.text);
    ImGui::Unindent();
}

}  // namespace

std::optional<files::Case> draw_reload_bar(Ui& ui, WatchedFile& watched) {
    if (!watched.news()) return {};
    const FileNews& news = *watched.news();
    std::optional<files::Case> asked;
    const bool can = news.now.c.has_value();
    if (ui.button("Reload", reload_key, "Undo brings your changes back", ui::enabled_if(can)))
        asked = news.now.c;
    ImGui::SameLine();
    const bool leave = ui.button("Ignore", leave_key, "Keeps the case on screen");
    ui.words_beside(changed_words(news) + (can ? "." : ", and cannot be read; the picture stays."),
                    Ui::Weight::alarm);
    if (news.now.trouble) draw_trouble(ui, *news.now.trouble);
    ImGui::Separator();
    if (asked || leave) watched.dismiss();
    return asked;
}

std::optional<UnsavedAnswer> draw_unsaved(Ui& ui, const std::string& words, const std::string& proceed,
                                          const std::string& stay, const ui::Key& key,
                                          const std::string& save) {
    std::optional<UnsavedAnswer> answer;
    if (!save.empty()) {
        if (ui.button(save, {sf::Keyboard::Enter}, "Into a new file beside the one that was opened"))
            answer = UnsavedAnswer::save;
        ImGui::SameLine();
    }
    if (ui.button(proceed, key, "Your changes are lost")) answer = UnsavedAnswer::proceed;
    ImGui::SameLine();
    if (ui.button(stay, leave_key)) answer = UnsavedAnswer::stay;
    ui.words_beside(words, Ui::Weight::alarm);
    ImGui::Separator();
    return answer;
}

bool draw_not_opened(Ui& ui, const FileTrouble& trouble) {
    const bool read = ui.button("Dismiss", leave_key);
    ui.words_beside(std::filesystem::path(trouble.file).filename().string() + " was not opened.",
                    Ui::Weight::alarm);
    draw_trouble(ui, trouble);
    ImGui::Separator();
    return read;
}

}  // namespace overbend::window
