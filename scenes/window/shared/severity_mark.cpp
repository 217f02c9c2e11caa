#include "scenes/window/shared/severity_mark.h"

#include <imgui.h>

#include <cmath>

#include "sim/units.h"

namespace overbend::window {

namespace {

constexpr ImU32 vermillion = IM_COL32(0xD5, 0x5E, 0x00, 0xFF), amber = IM_COL32(0xE6, 0x9F, 0x00, 0xFF),
                amber_rim = IM_COL32(0x7A, 0x52, 0x00, 0xFF), green = IM_COL32(0x00, 0x9E, 0x73, 0xFF),
                white = IM_COL32(0xFF, 0xFF, 0xFF, 0xFF), dark = IM_COL32(0x14, 0x18, 0x1E, 0xFF);

}  // namespace

void draw_standing(ImDrawList& list, const ImVec2& m, float height, Standing standing) {
    const float r = 0.5f * height, w = 0.13f * height;
    const auto at = [&](float x, float y) { return ImVec2(m.x + x * r, m.y + y * r); };
    if (standing == Standing::problem) {
        for (int i = 0; i < 8; ++i) {
            const float turn = static_cast<float>((i + 0.5) * 0.25 * pi);
            list.PathLineTo(at(std::cos(turn), std::sin(turn)));
        }
        list.PathFillConvex(vermillion);
        list.AddLine(at(-0.4f, -0.4f), at(0.4f, 0.4f), white, w);
        list.AddLine(at(0.4f, -0.4f), at(-0.4f, 0.4f), white, w);
    } else if (standing == Standing::caution) {
        list.AddTriangleFilled(at(0.0f, -0.95f), at(0.98f, 0.8f), at(-0.98f, 0.8f), amber);
        list.AddTriangle(at(0.0f, -0.95f), at(0.98f, 0.8f), at(-0.98f, 0.8f), amber_rim, 0.08f * height);
        list.AddLine(at(0.0f, -0.35f), at(0.0f, 0.2f), dark, w);
        list.AddCircleFilled(at(0.0f, 0.5f), 0.6f * w, dark);
    } else if (standing == Standing::good) {
        list.AddCircleFilled(m, r, green);
        const ImVec2 tick[] = {at(-0.45f, 0.05f), at(-0.1f, 0.4f), at(0.5f, -0.35f)};
        list.AddPolyline(tick, 3, white, ImDrawFlags_None, w);
    } else {
        list.AddCircle(m, 0.85f * r, ImGui::GetColorU32(ImGuiCol_TextDisabled), 24, w);
    }
}

void draw_band(const ImVec2& corner, double width, const std::string& words) {
    const float u = ImGui::GetFontSize(), right = corner.x + static_cast<float>(width);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(corner, {right, corner.y + 2.0f * u}, amber);
    list.PushClipRect(corner, {right, corner.y + 2.0f * u}, true);
    list.AddText({corner.x + 0.6f * u, corner.y + 0.5f * u}, dark, words.c_str());
    list.PopClipRect();
}

}  // namespace overbend::window
