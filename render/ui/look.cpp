#include "render/ui/look.h"

#include <imgui.h>

#include <stdexcept>

#include "render/picture/fonts.h"

namespace overbend::ui {

namespace {

ImVec4 imgui(const picture::Colour& c) {
    return {static_cast<float>(c.red), static_cast<float>(c.green), static_cast<float>(c.blue),
            static_cast<float>(c.opacity)};
}

}  // namespace

void set_colours(picture::Theme theme) {
    const picture::ThemeColours& t = picture::theme_colours(theme);
    ImVec4* colours = ImGui::GetStyle().Colors;
    if (theme == picture::Theme::light)
        ImGui::StyleColorsLight();
    else
        ImGui::StyleColorsDark();
    const auto set = [&](int what, const picture::Colour& colour) { colours[what] = imgui(colour); };
    set(ImGuiCol_Text, t.ink);
    set(ImGuiCol_TextDisabled, t.muted);
    set(ImGuiCol_WindowBg, t.page);
    // The page is what a frame is cleared to: painted over again it would cost a frame most of its time where
    // there is no graphics card.
    set(ImGuiCol_ChildBg, picture::with_opacity(t.page, 0.0));
    set(ImGuiCol_PopupBg, t.panel);
    set(ImGuiCol_Border, t.rule);
    set(ImGuiCol_FrameBg, picture::mixed(t.panel, t.ink, 0.06));
    set(ImGuiCol_FrameBgHovered, picture::mixed(t.panel, t.accent, 0.2));
    set(ImGuiCol_FrameBgActive, picture::mixed(t.panel, t.accent, 0.35));
    set(ImGuiCol_Button, picture::mixed(t.panel, t.ink, 0.10));
    set(ImGuiCol_ButtonHovered, picture::mixed(t.panel, t.accent, 0.3));
    set(ImGuiCol_ButtonActive, picture::mixed(t.panel, t.accent, 0.5));
    set(ImGuiCol_Header, picture::mixed(t.panel, t.accent, 0.25));
    set(ImGuiCol_HeaderHovered, picture::mixed(t.panel, t.accent, 0.35));
    set(ImGuiCol_HeaderActive, picture::mixed(t.panel, t.accent, 0.5));
    set(ImGuiCol_CheckMark, t.ink);
    set(ImGuiCol_SliderGrab, picture::mixed(t.panel, t.accent, 0.5));  // the figure is written over it
    set(ImGuiCol_SliderGrabActive, picture::mixed(t.accent, t.ink, 0.3));
    set(ImGuiCol_Separator, t.rule);
    set(ImGuiCol_Tab, picture::mixed(t.panel, t.ink, 0.06));
    set(ImGuiCol_TabHovered, picture::mixed(t.panel, t.accent, 0.3));
    set(ImGuiCol_TabActive, picture::mixed(t.panel, t.accent, 0.4));
    set(ImGuiCol_PlotHistogram, t.accent);
    set(ImGuiCol_PlotLinesHovered, t.alarm_words);  // what Ui::words writes an alarm in
    set(ImGuiCol_NavHighlight, t.accent);
    set(ImGuiCol_TextSelectedBg, picture::mixed(t.panel, t.accent, 0.5));
    set(ImGuiCol_TableRowBgAlt, picture::mixed(t.page, t.ink, 0.03));
    set(ImGuiCol_ScrollbarBg, t.page);
    set(ImGuiCol_ScrollbarGrab, picture::mixed(t.panel, t.ink, 0.25));
}

void set_sizes(double letter_px) {
    ImGuiIO& io = ImGui::GetIO();
    // Latin, Greek, dashes and quotes, arrows, mathematical signs, geometric shapes.
    static const ImWchar ranges[] = {0x20,   0xff,   0x391,  0x3c9,  0x2010, 0x2027, 0x2190,
                                     0x21ff, 0x2200, 0x226f, 0x25a0, 0x25ff, 0};
    const std::string file = (picture::fonts_folder() / "DejaVuSans.ttf").string();
    if (io.Fonts->AddFontFromFileTTF(file.c_str(), static_cast<float>(letter_px), nullptr, ranges) == nullptr)
        throw std::runtime_error(file + ": this font cannot be loaded");
    io.FontDefault = io.Fonts->Fonts.back();
    ImGuiStyle& style = ImGui::GetStyle();
    const float u = static_cast<float>(letter_px);
    style.WindowPadding = {0.6f * u, 0.5f * u};
    style.FramePadding = {0.45f * u, 0.22f * u};
    style.ItemSpacing = {0.5f * u, 0.38f * u};
    style.ItemInnerSpacing = {0.4f * u, 0.3f * u};
    style.CellPadding = {0.35f * u, 0.15f * u};
    style.IndentSpacing = 1.2f * u;
    style.ScrollbarSize = 0.9f * u;
    style.GrabMinSize = 0.8f * u;
    style.FrameRounding = style.GrabRounding = style.TabRounding = 0.2f * u;
    style.WindowRounding = style.ChildRounding = style.PopupRounding = 0.0f;
    style.WindowBorderSize = 0.0f;
}

}  // namespace overbend::ui
