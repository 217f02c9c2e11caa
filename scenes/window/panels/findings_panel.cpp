#include "scenes/window/panels/findings_panel.h"

#include <imgui.h>

#include "render/picture/strip_shape.h"
#include "scenes/window/shared/flow.h"
#include "sim/words.h"

namespace overbend::window {

namespace {

using ui::Ui;
using K = sf::Keyboard;

// Words over several lines, with a control of their width before them.
bool draw_row(Ui& ui, const std::string& said, Ui::Weight weight, bool placed, int number, bool chosen) {
    const std::string handle = words("%d", number);
    const bool used =
        ui.toggle(handle, ui::chosen_if(chosen), ui::no_key, "Shows when and where", ui::enabled_if(placed));
    ImGui::SameLine();
    ImGui::BeginGroup();
    ImGui::AlignTextToFramePadding();
    ui.words(said, weight);
    ImGui::EndGroup();
    // The words themselves may be clicked too.
    return used || (placed && ImGui::IsItemClicked());
}

}  // namespace

std::optional<FindingPlace> seen_at(const RanJob& job, const Finding& finding) {
    FindingPlace place = finding.place;
    if (place.step < 0 || place.state < 0) return {};
    const std::vector<int>& bends = job.c.steps[place.step].bends;
    const std::vector<double>& lines = job.result.blank.bend_line;
    const bool of_bend = place.of == On::bend;
    if (place.at || (bends.empty() && !of_bend)) return place;
    const stroke::Recording& recording = job.result.steps[place.step].stroke.recording;
    place.at = picture::spot_on(recording, recording.states[place.state],
                                lines[of_bend ? place.bend : bends.front()])
                   .at;
    return place;
}

std::optional<FindingPlace> FindingsPanel::draw(Ui& ui, const SharedJob& job) {
    if (!job) {
        ui.words("Nothing has been run yet.", Ui::Weight::muted);
        return {};
    }
    if (job != job_) {
        job_ = job, findings_ = job::alike(job->c, job::by_severity(job->result.findings)), chosen_ = -1;
        places_.clear();
        for (const job::Findings& group : findings_) places_.push_back(seen_at(*job, group.front()));
    }
    const int count = static_cast<int>(findings_.size());
    std::optional<FindingPlace> place;
    const auto choose = [&](int i) {
        chosen_ = i;
        place = places_[i];
    };
    const auto next = [&](int by) {
        for (int i = chosen_ + by; i >= 0 && i < count; i += by)
            if (places_[i]) return choose(i);
    };
    Flow flow(ui);
    if (flow.button("Previous finding", {K::PageUp, false, true})) next(-1);
    if (flow.button("Next finding", {K::PageDown, false, true})) next(1);
    if (!job->wrong.empty()) ui.words(job->wrong, Ui::Weight::alarm);
    if (job->wrong.empty())
        ui.words(job::verdict_words(job->result),
                 job->result.feasible() ? Ui::Weight::muted : Ui::Weight::alarm);
    for (int i = 0; i < count; ++i) {
        const Finding& f = findings_[i].front();
        if (i == 0 || f.severity != findings_[i - 1].front().severity)
            ui.words(job::heading_of(f.severity), Ui::Weight::heading);
        const Ui::Weight weight = f.severity == Severity::stops ? Ui::Weight::alarm : Ui::Weight::plain;
        if (draw_row(ui, job::sentence(job->c, findings_[i]), weight, places_[i].has_value(), i + 1,
                     i == chosen_))
            choose(i);
    }
    return place;
}

}  // namespace overbend::window
