#include "scenes/window/main_show.h"

#include <imgui.h>

#include <algorithm>

#include "render/picture/cautions.h"
#include "scenes/window/panels/reload_bar.h"

namespace overbend::window {

using ui::Key;
using ui::Ui;

MainShow::MainShow(const Remembered& remembered, const std::optional<std::filesystem::path>& file)
    : remembered_(remembered), process_(remembered), bench_(remembered) {
    if (file) process_.open(*file);
}

ui::Motion MainShow::motion() {
    // Both are called, so that neither keeps finished work waiting.
    const ui::Motion process = process_.motion(), bench = bench_.motion();
    return remembered_.scene == SceneKind::process ? process : bench;
}

void MainShow::draw(Ui& ui, int width, int height, double seconds) {
    ImGui::SetNextWindowPos({0.0f, 0.0f});
    ImGui::SetNextWindowSize({static_cast<float>(width), static_cast<float>(height)});
    ImGui::Begin("overbend", nullptr,
                 ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoBackground | ImGuiWindowFlags_NoMove |
                     ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoBringToFrontOnFocus |
                     ImGuiWindowFlags_NoScrollWithMouse);
    draw_row(ui);
    draw_leaving(ui);
    const float foot = ImGui::CalcTextSize(picture::brief_caution().c_str(), nullptr, false,
                                           ImGui::GetContentRegionAvail().x)
                           .y +
                       ImGui::GetStyle().ItemSpacing.y;
    ImGui::BeginChild("scene", {0.0f, -foot}, false,
                      ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    if (remembered_.scene == SceneKind::process)
        process_.draw(ui, theme(), seconds);
    else
        bench_.draw(ui, theme(), seconds);
    ImGui::EndChild();
    ui.words(picture::brief_caution(), Ui::Weight::muted);
    ImGui::End();
    draw_help(ui);
    remembered_.width = width, remembered_.height = height;
}

void MainShow::draw_row(Ui& ui) {
    const auto scene = [&](const char* words, SceneKind kind, const Key& key, const char* tip) {
        if (ui.toggle(words, ui::chosen_if(remembered_.scene == kind), key, tip)) remembered_.scene = kind;
        ImGui::SameLine();
    };
    scene("Process", SceneKind::process, {sf::Keyboard::F2}, "The strokes of a case, one after the other");
    scene("Bench", SceneKind::bench, {sf::Keyboard::F3}, "One strip, pressed and released by hand");
    ImGui::SameLine(0.0f, 2.0f * ImGui::GetFontSize());
    if (ui.button(remembered_.dark ? "Light" : "Dark", {sf::Keyboard::F4}, "For paper, or for a dark room"))
        remembered_.dark = !remembered_.dark;
    ImGui::SameLine();
    if (ui.button("Keys", {sf::Keyboard::F1}, "Lists the keyboard shortcuts")) help_ = !help_;
    draw_verdict(ui);
    if (ui.key("Close the window", {sf::Keyboard::Q, true})) over_ = may_close();
}

// The file and how it stands, at the row's right end; its words go first where there is no room.
void MainShow::draw_verdict(Ui& ui) {
    const std::optional<Verdict> verdict = process_.verdict();
    if (!verdict) return;
    const std::string name = process_.panels().file().filename().string();
    const std::string saved = process_.unsaved() ? "not saved" : "";
    const float u = ImGui::GetFontSize(), gap = ImGui::GetStyle().ItemSpacing.x;
    const auto wide = [](const std::string& words) { return ImGui::CalcTextSize(words.c_str()).x; };
    const float badge = wide(verdict->words) + 2.0f * ImGui::GetStyle().FramePadding.x,
                sign = 1.1f * u + 0.4f * gap;
    const float left = ImGui::GetItemRectMax().x - ImGui::GetWindowPos().x + 2.0f * u,
                right = ImGui::GetWindowContentRegionMax().x;
    float from = right - badge - sign;
    ImGui::SameLine();
    const float names = wide(name) + (saved.empty() ? 0.0f : gap + wide(saved)) + 2.0f * u;
    if (from - names > left) {
        ImGui::SetCursorPosX(from - names);
        ImGui::AlignTextToFramePadding();
        ui.words(name);
        if (!saved.empty()) ui.words_beside(saved, Ui::Weight::muted);
        ImGui::SameLine();
    }
    from = std::max(from, left);
    ImGui::SetCursorPosX(from + sign);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    draw_standing(*ImGui::GetWindowDrawList(),
                  {at.x - 0.5f * sign - 0.2f * gap, at.y + 0.5f * ImGui::GetFrameHeight()}, 1.1f * u,
                  verdict->standing);
    if (ui.button(verdict->words, {sf::Keyboard::F6}, "The findings of the case")) {
        remembered_.scene = SceneKind::process;
        process_.panels().open_findings();
    }
}

// A second close request counts as a yes.
bool MainShow::may_close() {
    if (leaving_ || (!process_.unsaved() && !process_.panels().writing())) return true;
    leaving_ = true;
    remembered_.scene = SceneKind::process;
    return false;
}

void MainShow::draw_leaving(Ui& ui) {
    if (!leaving_) return;
    // Once all is saved and written nothing is in its way.
    const bool writing = process_.panels().writing();
    if (!process_.unsaved() && !writing) over_ = true;
    const std::string name = process_.panels().file_beside().filename().string();
    const std::optional<UnsavedAnswer> answer =
        process_.unsaved()
            ? draw_unsaved(ui, "The case has unsaved changes.", "Close without saving", "Keep open", {},
                           "Save as " + name)
            : draw_unsaved(ui, "A file is still being written; the window closes when it is done.",
                           "Give it up and close", "Keep open", {});
    if (answer == UnsavedAnswer::proceed) over_ = true;
    if (answer == UnsavedAnswer::save && process_.panels().save_beside() && !writing) over_ = true;
    if (answer && answer != UnsavedAnswer::save) leaving_ = false;
}

void MainShow::draw_help(Ui& ui) {
    if (!help_) return;
    const ImGuiIO& io = ImGui::GetIO();
    ImGui::SetNextWindowPos({0.5f * io.DisplaySize.x, 0.5f * io.DisplaySize.y}, ImGuiCond_Always,
                            {0.5f, 0.5f});
    ImGui::SetNextWindowFocus();
    ImGui::SetNextWindowSizeConstraints({0.0f, 0.0f}, io.DisplaySize);
    ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, 1.0f);
    ImGui::Begin("Keys", nullptr,
                 ImGuiWindowFlags_AlwaysAutoResize | ImGuiWindowFlags_NoCollapse |
                     ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoTitleBar);
    auto lines = ui.shortcuts();
    lines.emplace_back("Tab, Shift+Tab", "Next and previous control");
    lines.emplace_back("Space, arrows", "Use the selected control");
    ui.words("Keys", Ui::Weight::heading);
    // Two columns, each read downwards.
    const std::size_t rows = (lines.size() + 1) / 2;
    if (ImGui::BeginTable("keys", 4)) {
        for (std::size_t row = 0; row < rows; ++row)
            for (const std::size_t n : {row, row + rows}) {
                const bool is_there = n < lines.size();
                ImGui::TableNextColumn();
                ImGui::TextUnformatted(is_there ? lines[n].first.c_str() : "");
                ImGui::TableNextColumn();
                ImGui::TextUnformatted(is_there ? (lines[n].second + "   ").c_str() : "");
            }
        ImGui::EndTable();
    }
    if (ui.button("Close the list of keys", {sf::Keyboard::Escape})) help_ = false;
    ImGui::End();
    ImGui::PopStyleVar();
}

void MainShow::dropped(const std::vector<std::filesystem::path>& files) {
    if (files.empty()) return;
    remembered_.scene = SceneKind::process;
    process_.open(files.front());
}

picture::Theme MainShow::theme() const {
    return remembered_.dark ? picture::Theme::dark : picture::Theme::light;
}

std::string MainShow::title() const {
    if (remembered_.scene == SceneKind::bench) return "overbend: springback bench";
    const std::string name = process_.panels().file().filename().string();
    if (name.empty()) return "overbend: process";
    return "overbend: " + name + (process_.unsaved() ? " (not saved)" : "");
}

Remembered MainShow::remembered() const {
    Remembered r = remembered_;
    process_.remember(r);
    bench_.remember(r);
    return r;
}

}  // namespace overbend::window
