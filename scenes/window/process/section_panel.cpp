#include "scenes/window/process/section_panel.h"

#include <imgui.h>

#include <algorithm>
#include <cmath>

#include "sim/words.h"

namespace overbend::window {

namespace {

constexpr double chart_letters = 0.74;  // of the letters around

void line(const char* what, const std::string& figure) {
    ImGui::TableNextColumn();
    ImGui::TextUnformatted(what);
    ImGui::TableNextColumn();
    ImGui::TextUnformatted(figure.c_str());
}

// A value that is printed as zero has no sign.
double without_sign_of_zero(double value, double least) {
    return std::abs(value) < least ? 0.0 : value;
}

}  // namespace

void SectionPanel::show(const Painted& painted) {
    has_charts_ = painted.charts != nullptr;
    if (painted.charts) charts_.show(*painted.charts);
    figures_.reset();
    if (!painted.section) return;
    const chart::SectionNow& s = *painted.section;
    const chart::LayerPoint& layer = s.layers[s.marked.value_or(0)];
    figures_ = Figures{s.blank_position, layer.height, layer.stress, layer.plastic_strain, s.at};
}

bool SectionPanel::draw(ui::Ui& ui, const SectionMark& mark) {
    ui.words(words("Section at %.1f mm of the blank", mark.blank_position), ui::Ui::Weight::heading);
    const bool close = ui.button("Close section", {sf::Keyboard::X});
    if (figures_ && ImGui::BeginTable("figures", 2)) {
        line("layer at height", words("%+.3f mm", figures_->height));
        const bool is_zero = std::abs(figures_->stress) < 0.5;
        line("hoop stress", is_zero ? "0 MPa" : words("%+.0f MPa", figures_->stress));
        line("plastic strain", words("%.3f %%", 100.0 * figures_->plastic_strain));
        line("curvature", words("%.4f /mm", without_sign_of_zero(figures_->at.curvature, 0.00005)));
        line("moment", words("%.1f N mm/mm", without_sign_of_zero(figures_->at.moment, 0.05)));
        ImGui::EndTable();
    }
    const ImVec2 room = ImGui::GetContentRegionAvail();
    width_ = std::max(0, static_cast<int>(room.x)), height_ = std::max(0, static_cast<int>(room.y));
    letter_ = std::max(10.0, chart_letters * ImGui::GetFontSize());
    if (has_charts_) ui.picture("Section charts", charts_);
    return close;
}

}  // namespace overbend::window
