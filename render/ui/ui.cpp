#include "render/ui/ui.h"

#include <imgui.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <cmath>

namespace overbend::ui {

namespace {

float px(double value) {
    return static_cast<float>(value);
}

bool is_arrow(sf::Keyboard::Key code) {
    using K = sf::Keyboard;
    return code == K::Left || code == K::Right || code == K::Up || code == K::Down;
}

std::string code_words(sf::Keyboard::Key code) {
    using K = sf::Keyboard;
    if (code >= K::A && code <= K::Z) return std::string(1, static_cast<char>('A' + code - K::A));
    if (code >= K::Num0 && code <= K::Num9) return std::string(1, static_cast<char>('0' + code - K::Num0));
    if (code >= K::F1 && code <= K::F15) return "F" + std::to_string(code - K::F1 + 1);
    static const std::pair<K::Key, const char*> words[] = {{K::Space, "Space"},
                                                           {K::Left, "Left"},
                                                           {K::Right, "Right"},
                                                           {K::Up, "Up"},
                                                           {K::Down, "Down"},
                                                           {K::Home, "Home"},
                                                           {K::End, "End"},
                                                           {K::PageUp, "Page Up"},
                                                           {K::Enter, "Enter"},
                                                           {K::PageDown, "Page Down"},
                                                           {K::Escape, "Esc"},
                                                           {K::Add, "+"},
                                                           {K::Subtract, "-"},
                                                           {K::Delete, "Delete"},
                                                           {K::Backspace, "Backspace"},
                                                           {K::Comma, ","},
                                                           {K::Period, "."},
                                                           {K::LBracket, "["},
                                                           {K::RBracket, "]"},
                                                           {K::Slash, "/"},
                                                           {K::Tab, "Tab"},
                                                           {K::Equal, "="},
                                                           {K::Hyphen, "-"}};
    for (const auto& [key, word] : words)
        if (key == code) return word;
    return "?";
}

void show_tip(const std::string& tip, const Key& key) {
    std::string all = tip;
    if (key.code != sf::Keyboard::Unknown) all += (all.empty() ? "" : "  ") + ("[" + key_words(key) + "]");
    if (all.empty() || !ImGui::IsItemHovered(ImGuiHoveredFlags_AllowWhenDisabled)) return;
    ImGui::BeginTooltip();
    ImGui::PushTextWrapPos(24.0f * ImGui::GetFontSize());
    ImGui::TextUnformatted(all.c_str());
    ImGui::PopTextWrapPos();
    ImGui::EndTooltip();
}

}  // namespace

std::string key_words(const Key& key) {
    if (key.code == sf::Keyboard::Unknown) return "";
    return std::string(key.ctrl ? "Ctrl+" : "") + (key.shift ? "Shift+" : "") + code_words(key.code);
}

// The words before the control, so that a column of controls is flush.
void Ui::label_before(const std::string& words) const {
    const float whole = ImGui::GetContentRegionAvail().x;
    ImGui::AlignTextToFramePadding();
    const float begin = ImGui::GetCursorPosX();
    ImGui::TextUnformatted(words.c_str());
    ImGui::SameLine();
    ImGui::SetCursorPosX(std::max(ImGui::GetCursorPosX(), begin + px(words_before_) * whole));
    ImGui::SetNextItemWidth(ImGui::GetContentRegionAvail().x);
}

void Ui::begin_frame() {
    words_before_ = columns_at;
    std::vector<std::string> among;
    for (const Control& c : controls_)
        if (c.enabled && c.box.width > 0.0 && c.kind != ControlKind::picture) among.push_back(c.words);
    frame_.begin(among);
    controls_.clear();
    disabled_ = 0;
}

bool Ui::pressed(const Key& key) const {
    const ImGuiIO& io = ImGui::GetIO();
    if (key.code == sf::Keyboard::Unknown || disabled_ > 0) return false;
    if (io.WantTextInput && !key.ctrl && !(key.code >= sf::Keyboard::F1 && key.code <= sf::Keyboard::F15))
        return false;
    // Space and Enter belong to the control that is framed, all keys but those with Ctrl to a list that is
    // open, and arrows to a control that is being used.
    if (io.NavVisible && (key.code == sf::Keyboard::Space || key.code == sf::Keyboard::Enter)) return false;
    if (!key.ctrl && ImGui::IsPopupOpen("", ImGuiPopupFlags_AnyPopupId | ImGuiPopupFlags_AnyPopupLevel))
        return false;
    if (is_arrow(key.code) && ImGui::IsAnyItemActive()) return false;
    if (io.KeyCtrl != key.ctrl || io.KeyShift != key.shift || io.KeyAlt) return false;
    return ImGui::IsKeyPressed(key.code);
}

void Ui::note(const std::string& words, ControlKind kind, const Key& key, const std::string& tip, bool used) {
    Control c;
    c.words = words, c.kind = kind, c.key = key, c.enabled = disabled_ == 0;
    const ImVec2 low = ImGui::GetItemRectMin(), high = ImGui::GetItemRectMax();
    c.box = {low.x, low.y, static_cast<double>(high.x) - low.x, static_cast<double>(high.y) - low.y};
    c.visible = ImGui::IsItemVisible();
    controls_.push_back(c);
    if (used) ++used_[words];
    frame_.offer(words, kind == ControlKind::number ? FramedAs::field_with_buttons
                        : kind == ControlKind::text ? FramedAs::field
                                                    : FramedAs::item);
    show_tip(tip, key);
}

bool Ui::button(const std::string& words, const Key& key, const std::string& tip, Enabled enabled) {
    begin_enabled(enabled);
    const bool used = ImGui::Button(words.c_str()) || pressed(key);
    note(words, ControlKind::button, key, tip, used);
    end_enabled();
    return used;
}

bool Ui::toggle(const std::string& words, Chosen chosen, const Key& key, const std::string& tip,
                Enabled enabled) {
    if (chosen == Chosen::yes)
        ImGui::PushStyleColor(ImGuiCol_Button, ImGui::GetStyleColorVec4(ImGuiCol_ButtonActive));
    const bool used = button(words, key, tip, enabled);
    if (chosen == Chosen::yes) ImGui::PopStyleColor();
    return used;
}

bool Ui::check(const std::string& words, bool& value, const Key& key, const std::string& tip) {
    bool used = ImGui::Checkbox(words.c_str(), &value);
    if (!used && pressed(key)) value = !value, used = true;
    note(words, ControlKind::check, key, tip, used);
    return used;
}

bool Ui::choice(const std::string& words, int& chosen, const std::vector<std::string>& among,
                const std::string& tip) {
    label_before(words);
    bool used = false;
    const std::string now =
        chosen >= 0 && chosen < static_cast<int>(among.size()) ? among[static_cast<std::size_t>(chosen)] : "";
    const bool open = ImGui::BeginCombo(("##" + words).c_str(), now.c_str());
    // The box itself is what is noted, not its list.
    note(words, ControlKind::choice, no_key, open ? "" : tip, false);
    if (open) {
        for (int i = 0; i < static_cast<int>(among.size()); ++i) {
            const std::string& each = among[static_cast<std::size_t>(i)];
            const bool clicked =
                ImGui::Selectable((each + "##" + words + std::to_string(i)).c_str(), i == chosen);
            note(words + ": " + each, ControlKind::entry, no_key, "", clicked);
            if (clicked) chosen = i, used = true;
        }
        ImGui::EndCombo();
    }
    if (used) ++used_[words];
    return used;
}

bool Ui::entry(const std::string& words, Chosen chosen, const std::string& tip) {
    const bool used = ImGui::Selectable(words.c_str(), chosen == Chosen::yes);
    note(words, ControlKind::entry, no_key, tip, used);
    return used;
}

bool Ui::slider(const std::string& words, double& value, double low, double high, const char* format,
                const std::string& tip) {
    label_before(words);
    const NumberField field{low, high, format};
    const float whole = ImGui::GetContentRegionAvail().x, gap = ImGui::GetStyle().ItemInnerSpacing.x;
    const float typed = std::min(0.5f * whole, 6.4f * ImGui::GetFontSize());
    ImGui::SetNextItemWidth(std::max(1.0f, whole - typed - gap));
    bool used = ImGui::SliderScalar(("##" + words).c_str(), ImGuiDataType_Double, &value, &low, &high, "",
                                    ImGuiSliderFlags_AlwaysClamp | ImGuiSliderFlags_NoInput);
    if (used) refused_.erase(words);
    note(words, ControlKind::slider, no_key, tip, used);
    ImGui::SameLine(0.0f, gap);
    const std::string beside = words + ", typed";
    const bool entered = typed_field(words, ("##" + beside).c_str(), typed, value, field);
    note(beside, ControlKind::text, no_key, "", entered);
    refusal(words, value, field);
    return used || entered;
}

bool Ui::typed_field(const std::string& words, const char* id, double width, double& value,
                     const NumberField& field) {
    const std::string now = shown_number(value, field);
    const auto begun = typed_.find(words);
    std::string text = begun == typed_.end() ? now : begun->second;
    ImGui::SetNextItemWidth(px(width));
    ImGui::InputText(id, &text, ImGuiInputTextFlags_AutoSelectAll | ImGuiInputTextFlags_NoHorizontalScroll);
    if (refused_.count(words) > 0)
        ImGui::GetWindowDrawList()->AddRect(ImGui::GetItemRectMin(), ImGui::GetItemRectMax(),
                                            ImGui::GetColorU32(ImGuiCol_PlotLinesHovered),
                                            ImGui::GetStyle().FrameRounding, 0, 2.0f);
    // The value changes when the typing is over; until then the control keeps what is typed.
    if (ImGui::IsItemActive()) {
        typed_[words] = text;
        return false;
    }
    if (begun == typed_.end()) return false;
    typed_.erase(begun);
    refused_.erase(words);
    if (text == now) return false;
    const TypedNumber read = read_typed(text, field);
    if (!read.value) {
        refused_[words] = read.wrong;
        return false;
    }
    const bool used = *read.value != value;
    value = *read.value;
    return used;
}

void Ui::refusal(const std::string& of, double value, const NumberField& field) {
    const auto refused = refused_.find(of);
    if (refused != refused_.end())
        words(refused->second + "; " + shown_number(value, field) + " is kept.", Weight::alarm);
}

bool Ui::number(const std::string& words, double& value, double low, double high, double step,
                const char* format, const std::string& tip) {
    label_before(words);
    const NumberField field{low, high, format};
    // The field within is found by the keyboard as that of ImGui's own numbers.
    ImGui::BeginGroup();
    ImGui::PushID(("##" + words).c_str());
    const float gap = ImGui::GetStyle().ItemInnerSpacing.x, height = ImGui::GetFrameHeight();
    const double width = std::max(1.0f, ImGui::GetContentRegionAvail().x - 2.0f * (height + gap));
    bool used = typed_field(words, "", width, value, field);
    ImGui::PushButtonRepeat(true);
    const auto stepped = [&](const char* sign, double by) {
        ImGui::SameLine(0.0f, gap);
        if (!ImGui::Button(sign, {height, height})) return;
        const double next = std::clamp(value + by, low, high);
        used = used || next != value;
        value = next;
        refused_.erase(words);
    };
    stepped("-", -step);
    stepped("+", step);
    ImGui::PopButtonRepeat();
    ImGui::PopID();
    ImGui::EndGroup();
    note(words, ControlKind::number, no_key, tip, used);
    refusal(words, value, field);
    return used;
}

bool Ui::text(const std::string& words, std::string& value, const std::string& tip) {
    label_before(words);
    const bool used = ImGui::InputText(("##" + words).c_str(), &value, ImGuiInputTextFlags_EnterReturnsTrue);
    note(words, ControlKind::text, no_key, tip, used);
    return used;
}

PictureInput Ui::picture(const std::string& words, const Texture& texture, double times) {
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const double width = std::max(1, texture.width()), height = std::max(1, texture.height());
    PictureInput input = pointed(words, times * width, times * height, "");
    input.at /= times, input.dragged /= times, input.dragged_right /= times;
    texture.add_to(*ImGui::GetWindowDrawList(), {corner.x, corner.y}, times);
    return input;
}

PictureInput Ui::area(const std::string& words, double width, double height, const std::string& tip) {
    return pointed(words, width, height, tip);
}

PictureInput Ui::pointed(const std::string& words, double width, double height, const std::string& tip) {
    PictureInput input;
    const ImVec2 size(px(std::max(1.0, width)), px(std::max(1.0, height)));
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    ImGui::InvisibleButton(words.c_str(), size,
                           ImGuiButtonFlags_MouseButtonLeft | ImGuiButtonFlags_MouseButtonRight |
                               ImGuiButtonFlags_MouseButtonMiddle);
    const ImGuiIO& io = ImGui::GetIO();
    input.hovered = ImGui::IsItemHovered(ImGuiHoveredFlags_AllowWhenBlockedByActiveItem);
    input.at = {io.MousePos.x - corner.x, io.MousePos.y - corner.y};
    if (input.hovered) input.wheel = io.MouseWheel;
    const bool active = ImGui::IsItemActive();
    const picture::Point moved(io.MouseDelta.x, io.MouseDelta.y);
    input.held = active && io.MouseDown[0];
    input.pressed = active && ImGui::IsMouseClicked(0);
    if (input.held && !input.pressed) input.dragged = moved;
    if (active && (io.MouseDown[1] || io.MouseDown[2])) input.dragged_right = moved;
    input.released = ImGui::IsItemDeactivated() && ImGui::IsMouseReleased(0);
    input.clicked = input.released && io.MouseClickedLastCount[0] < 2 && input.hovered &&
                    io.MouseDragMaxDistanceSqr[0] < 16.0f;
    input.double_clicked = input.hovered && ImGui::IsMouseDoubleClicked(0);
    note(words, ControlKind::picture, no_key, tip,
         input.clicked || input.wheel != 0.0 || input.dragged != picture::Point(picture::Point::Zero()) ||
             input.dragged_right != picture::Point(picture::Point::Zero()));
    return input;
}

bool Ui::key(const std::string& words, const Key& key) {
    const bool used = pressed(key);
    Control c;
    c.words = words, c.key = key, c.visible = false, c.enabled = disabled_ == 0;
    controls_.push_back(c);
    if (used) ++used_[words];
    return used;
}

void Ui::scroll_by_keys() {
    const float page = 0.8f * ImGui::GetWindowHeight();
    float by = 0.0f;
    if (key("Scroll panel down", {sf::Keyboard::PageDown, true})) by = page;
    if (key("Scroll panel up", {sf::Keyboard::PageUp, true})) by = -page;
    if (by != 0.0f) ImGui::SetScrollY(std::clamp(ImGui::GetScrollY() + by, 0.0f, ImGui::GetScrollMaxY()));
}

void Ui::words(const std::string& words, Weight weight) {
    ImGui::PushTextWrapPos(0.0f);
    if (weight == Weight::muted)
        ImGui::PushStyleColor(ImGuiCol_Text, ImGui::GetStyleColorVec4(ImGuiCol_TextDisabled));
    if (weight == Weight::alarm)
        ImGui::PushStyleColor(ImGuiCol_Text, ImGui::GetStyleColorVec4(ImGuiCol_PlotLinesHovered));
    if (weight == Weight::heading) {
        ImGui::Spacing();
        ImGui::SetWindowFontScale(1.12f);
    }
    ImGui::TextUnformatted(words.c_str());
    if (weight == Weight::heading) {
        ImGui::SetWindowFontScale(1.0f);
        ImGui::Separator();
    }
    if (weight == Weight::muted || weight == Weight::alarm) ImGui::PopStyleColor();
    ImGui::PopTextWrapPos();
}

void Ui::words_beside(const std::string& said, Weight weight) {
    ImGui::SameLine();
    ImGui::AlignTextToFramePadding();
    words(said, weight);
}

void Ui::begin_enabled(Enabled enabled) {
    ImGui::BeginDisabled(enabled == Enabled::no);
    disabled_ += enabled == Enabled::no || disabled_ > 0 ? 1 : 0;
}

void Ui::end_enabled() {
    ImGui::EndDisabled();
    if (disabled_ > 0) --disabled_;
}

std::vector<std::pair<std::string, std::string>> Ui::shortcuts() const {
    std::vector<std::pair<std::string, std::string>> lines;
    for (const Control& c : controls_)
        if (c.key.code != sf::Keyboard::Unknown) lines.emplace_back(key_words(c.key), c.words);
    return lines;
}

}  // namespace overbend::ui
