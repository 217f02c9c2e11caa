#include "scenes/window/process/time_bar.h"

#include <imgui.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <string>

#include "sim/words.h"

namespace overbend::window {

namespace {

using picture::Colour;

ImU32 imgui(const Colour& c) {
    return ImGui::ColorConvertFloat4ToU32({static_cast<float>(c.red), static_cast<float>(c.green),
                                           static_cast<float>(c.blue), static_cast<float>(c.opacity)});
}

float px(double value) {
    return static_cast<float>(value);
}

// Where things stand: frames across, four bands down.
struct Bar {
    double left, width, top, letter, last;
    double x(double frame) const { return left + width * frame / std::max(1.0, last); }
    double upper() const { return top + 0.35 * letter; }   // of the segments
    double lower() const { return top + 1.85 * letter; }   // of the segments
    double bottom() const { return top + 2.25 * letter; }  // of the marks
};

// Words cut to a width; none where not even a few letters have room.
std::string cut_to(const std::string& words, double width) {
    if (ImGui::CalcTextSize(words.c_str()).x <= width) return words;
    for (std::size_t n = words.size(); n-- > 2;) {
        if ((static_cast<unsigned char>(words[n]) & 0xC0) == 0x80) continue;  // within a letter
        std::string shorter = words.substr(0, n) + "\u2026";
        if (ImGui::CalcTextSize(shorter.c_str()).x <= width) return shorter;
    }
    return "";
}

void draw_strokes(const Bar& bar, const Playback& playback, const PlayHead& head, picture::Theme theme) {
    ImDrawList* list = ImGui::GetWindowDrawList();
    const picture::ThemeColours& t = picture::theme_colours(theme);
    const double middle = 0.5 * (bar.upper() + bar.lower());
    list->AddRectFilled({px(bar.x(0)), px(middle - 0.18 * bar.letter)},
                        {px(bar.x(bar.last)), px(middle + 0.18 * bar.letter)},
                        imgui(picture::mixed(t.panel, t.ink, 0.10)), px(0.18 * bar.letter));
    for (const Stretch& s : playback.strokes) {
        const bool here = head.at >= s.first && head.at < s.last + 1.0;
        const double x = bar.x(s.first), right = bar.x(s.last);
        list->AddRectFilled({px(x), px(bar.upper())}, {px(right), px(bar.lower())},
                            imgui(picture::mixed(t.panel, here ? t.accent : t.ink, here ? 0.40 : 0.14)),
                            px(0.2 * bar.letter));
        const std::string name = std::to_string(playback.shown.strokes[s.stroke].number) + " " +
                                 playback.shown.strokes[s.stroke].name;
        const std::string words = cut_to(name, right - x - 0.6 * bar.letter);
        const ImVec2 size = ImGui::CalcTextSize(words.c_str());
        list->AddText({px(0.5 * (x + right - size.x)), px(middle - 0.5 * size.y)}, imgui(t.ink),
                      words.c_str());
    }
}

void draw_interferences(const Bar& bar, const Playback& playback, picture::Theme theme) {
    ImDrawList* list = ImGui::GetWindowDrawList();
    const picture::ThemeColours& t = picture::theme_colours(theme);
    for (const Stretch& s : playback.interferences) {
        const double x = bar.x(s.first), right = std::max(bar.x(s.last), x + 0.3 * bar.letter);
        list->AddRectFilled({px(x), px(bar.lower())}, {px(right), px(bar.bottom())}, imgui(t.alarm));
        list->AddTriangleFilled({px(x - 0.35 * bar.letter), px(bar.bottom())},
                                {px(x + 0.35 * bar.letter), px(bar.bottom())},
                                {px(x), px(bar.lower() - 0.3 * bar.letter)}, imgui(t.alarm));
    }
}

// "12.4 s, hook: press"
std::string told_at(const Playback& playback, double at) {
    const film::Instant& m = playback.frames.instants[static_cast<std::size_t>(at)];
    if (m.passage == film::Passage::finished)
        return words("%.1f s, the finished part", at / playback.frames.frames_per_second);
    std::string passage = m.caption.substr(0, m.caption.find(':'));
    if (!passage.empty()) passage.front() = static_cast<char>(std::tolower(passage.front()));
    const std::string& name = playback.shown.strokes[m.stroke].name;
    return words("%.1f s, ", at / playback.frames.frames_per_second) + name +
           (passage.empty() ? "" : ": " + passage);
}

void draw_head(const Bar& bar, const PlayHead& head, picture::Theme theme) {
    ImDrawList* list = ImGui::GetWindowDrawList();
    const picture::ThemeColours& t = picture::theme_colours(theme);
    const double x = bar.x(head.at), half = 0.4 * bar.letter;
    list->AddLine({px(x), px(bar.top)}, {px(x), px(bar.bottom())}, imgui(t.page), px(0.34 * bar.letter));
    list->AddLine({px(x), px(bar.top)}, {px(x), px(bar.bottom())}, imgui(t.ink), px(0.14 * bar.letter));
    list->AddTriangleFilled({px(x - half), px(bar.top)}, {px(x + half), px(bar.top)},
                            {px(x), px(bar.top + 1.3 * half)}, imgui(t.ink));
}

}  // namespace

double time_bar_height() {
    return 2.35 * ImGui::GetFontSize();
}

std::optional<double> draw_time_bar(ui::Ui& ui, const Playback& playback, const PlayHead& head,
                                    picture::Theme theme) {
    const ImVec2 corner = ImGui::GetCursorScreenPos();
    const double letter = ImGui::GetFontSize(), whole = ImGui::GetContentRegionAvail().x;
    const Bar bar{corner.x + 0.4 * letter, std::max(1.0, whole - 0.8 * letter), corner.y, letter,
                  playback.last()};
    const ui::PictureInput input = ui.area("Timeline", whole, time_bar_height());
    draw_strokes(bar, playback, head, theme);
    draw_interferences(bar, playback, theme);
    draw_head(bar, head, theme);
    const double pointed = std::clamp((corner.x + input.at.x() - bar.left) / bar.width, 0.0, 1.0) * bar.last;
    if (input.hovered && !input.held) {
        ImGui::SetNextWindowPos({ImGui::GetIO().MousePos.x, corner.y}, ImGuiCond_Always, {0.5f, 1.0f});
        ImGui::SetTooltip("%s", told_at(playback, std::floor(pointed)).c_str());
    }
    if (!input.held) return {};
    return pointed;
}

}  // namespace overbend::window
