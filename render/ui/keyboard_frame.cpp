#include "render/ui/keyboard_frame.h"

#include <imgui.h>
#include <imgui_internal.h>

#include <SFML/Window/Keyboard.hpp>
#include <algorithm>

namespace overbend::ui {

namespace {

bool list_is_open() {
    return ImGui::IsPopupOpen("", ImGuiPopupFlags_AnyPopupId | ImGuiPopupFlags_AnyPopupLevel);
}

// To be found by the next frame.
void keep_arrows_within() {
    using K = sf::Keyboard;
    const bool used = list_is_open() || ImGui::IsAnyItemActive();
    const std::pair<ImGuiKey_, K::Key> keys[] = {
        {ImGuiKey_LeftArrow, K::Left}, {ImGuiKey_RightArrow, K::Right}, {ImGuiKey_UpArrow, K::Up},
        {ImGuiKey_DownArrow, K::Down}, {ImGuiKey_PageUp, K::PageUp},    {ImGuiKey_PageDown, K::PageDown},
        {ImGuiKey_Home, K::Home},      {ImGuiKey_End, K::End}};
    for (const auto& [imgui, sfml] : keys) ImGui::GetIO().KeyMap[imgui] = used ? sfml : -1;
}

// As InputDouble makes it.
ImGuiID field_of(const std::string& words) {
    ImGui::PushID(("##" + words).c_str());
    const ImGuiID id = ImGui::GetID("");
    ImGui::PopID();
    return id;
}

}  // namespace

void KeyboardFrame::begin(const std::vector<std::string>& among) {
    keep_arrows_within();
    next_.clear();
    const ImGuiIO& io = ImGui::GetIO();
    if (among.empty() || io.KeyCtrl || io.KeyAlt || list_is_open() || !ImGui::IsKeyPressed(sf::Keyboard::Tab))
        return;
    const std::size_t count = among.size();
    const auto now = std::find(among.begin(), among.end(), framed_);
    if (now != among.end())
        at_ = static_cast<std::size_t>(now - among.begin()) + (io.KeyShift ? count - 1 : 1);
    else if (framed_.empty())
        at_ = io.KeyShift ? count - 1 : 0;
    at_ %= count;
    next_ = among[at_];
    ImGui::ClearActiveID();  // what was typed in a field stands
}

void KeyboardFrame::offer(const std::string& words, FramedAs as) {
    if (next_.empty() || words != next_) return;
    const ImGuiID id = as == FramedAs::field_with_buttons ? field_of(words) : ImGui::GetItemID();
    next_.clear();
    framed_ = words;
    ImGuiContext& imgui = *ImGui::GetCurrentContext();
    ImGui::SetFocusID(id, imgui.CurrentWindow);
    imgui.NavDisableHighlight = false;
    imgui.NavDisableMouseHover = true;
    ImGui::ScrollToItem(ImGuiScrollFlags_KeepVisibleEdgeY);
    if (as != FramedAs::item) ImGui::ActivateItem(id);
}

}  // namespace overbend::ui
