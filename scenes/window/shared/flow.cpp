#include "scenes/window/shared/flow.h"

#include <imgui.h>

namespace overbend::window {

void Flow::next(double width) {
    if (!first_) {
        const float right = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
        const float needed = ImGui::GetStyle().ItemSpacing.x + static_cast<float>(width);
        if (ImGui::GetItemRectMax().x + needed <= right) ImGui::SameLine();
    }
    first_ = false;
}

void Flow::next_button(const std::string& words) {
    next(ImGui::CalcTextSize(words.c_str()).x + 2.0f * ImGui::GetStyle().FramePadding.x);
}

bool Flow::button(const std::string& words, const ui::Key& key, const std::string& tip, ui::Enabled enabled) {
    next_button(words);
    return ui_->button(words, key, tip, enabled);
}

bool Flow::toggle(const std::string& words, ui::Chosen chosen, const ui::Key& key, const std::string& tip,
                  ui::Enabled enabled) {
    next_button(words);
    return ui_->toggle(words, chosen, key, tip, enabled);
}

void Flow::boxed(const char* id, double width, const std::function<void()>& control) {
    next(width);
    ImGui::BeginChild(id, {static_cast<float>(width), ImGui::GetFrameHeight()}, false,
                      ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    ui_->words_before(0.0);
    control();
    ui_->words_before(ui::Ui::columns_at);
    ImGui::EndChild();
}

}  // namespace overbend::window
