#include "scenes/window/main_show.h"

#include <imgui.h>

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
    if (ui.key("Close the window", {sf::Keyboard::Q, true})) over_ = may_close();
}

// A second close request counts as a yes.
bool MainShow::may_close() {
    if (leaving_ || !process_.unsaved()) return true;
    leaving_ = true;
    remembered_.scene = SceneKind::process;
    return false;
}

void MainShow::draw_leaving(Ui& ui) {
    if (!leaving_) return;
    if (!process_.unsaved()) over_ = true;  // once they are saved nothing is in its way
    const std::optional<UnsavedAnswer> answer = draw_unsaved(
        ui, "The case has unsaved changes (Ctrl+S saves them).", "Close without saving", "Keep open", {});
    if (answer == UnsavedAnswer::proceed) over_ = true;
    if (answer) leaving_ = false;
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
    return remembered_.scene == SceneKind::bench ? "overbend: springback bench" : "overbend: process";
}

Remembered MainShow::remembered() const {
    Remembered r = remembered_;
    process_.remember(r);
    bench_.remember(r);
    return r;
}

}  // namespace overbend::window
