#include "scenes/window/panels/findings_panel.h"

#include <imgui.h>

#include "scenes/window/shared/flow.h"
#include "sim/words.h"

namespace overbend::window {

namespace {

using ui::Ui;
using K = sf::Keyboard;

const char* heading_of(FindingWeight weight) {
    switch (weight) {
        case FindingWeight::against:
            return "Problems";
        case FindingWeight::caution:
            return "Cautions";
        case FindingWeight::remark:
            return "Remarks";
    }
    return "";
}

// Words over several lines, with a control of their width before them.
bool draw_row(Ui& ui, const Finding& finding, int number, bool chosen) {
    const std::string handle = words("%d", number);
    bool used = false;
    ui.begin_enabled(finding.place ? ui::Enabled::yes : ui::Enabled::no);
    used = ui.toggle(handle, chosen ? ui::Chosen::yes : ui::Chosen::no, ui::no_key, "Shows when and where");
    ui.end_enabled();
    ImGui::SameLine();
    ImGui::BeginGroup();
    ImGui::AlignTextToFramePadding();
    ui.words(finding.words, finding.weight == FindingWeight::against ? Ui::Weight::alarm : Ui::Weight::plain);
    ImGui::EndGroup();
    // The words themselves may be clicked too.
    return used || (finding.place && ImGui::IsItemClicked());
}

}  // namespace

std::optional<FindingPlace> FindingsPanel::draw(Ui& ui, const SharedJob& job) {
    if (!job) {
        ui.words("Nothing has been run yet.", Ui::Weight::muted);
        return {};
    }
    if (job != job_) job_ = job, findings_ = findings_of(*job), chosen_ = -1;
    const int count = static_cast<int>(findings_.size());
    std::optional<FindingPlace> place;
    const auto choose = [&](int i) {
        chosen_ = i;
        place = findings_[i].place;
    };
    const auto next = [&](int by) {
        for (int i = chosen_ + by; i >= 0 && i < count; i += by)
            if (findings_[i].place) return choose(i);
    };
    Flow flow;
    flow.next_button("Previous finding");
    if (ui.button("Previous finding", {K::PageUp, false, true})) next(-1);
    flow.next_button("Next finding");
    if (ui.button("Next finding", {K::PageDown, false, true})) next(1);
    if (count == 0) ui.words("Feasible: no problems found.", Ui::Weight::muted);
    for (int i = 0; i < count; ++i) {
        if (i == 0 || findings_[i].weight != findings_[i - 1].weight)
            ui.words(heading_of(findings_[i].weight), Ui::Weight::heading);
        if (draw_row(ui, findings_[i], i + 1, i == chosen_)) choose(i);
    }
    return place;
}

}  // namespace overbend::window
