// The buttons and keys that play a film.

#include <cmath>

#include <imgui.h>

#include "scenes/window/process/controls.h"
#include "scenes/window/shared/flow.h"
#include "sim/words.h"

namespace overbend::window {

namespace {

using ui::chosen_if;
using K = sf::Keyboard;

std::string speed_words(double speed) {
    return words("\u00d7 %g", std::round(100.0 * speed) / 100.0);
}

void draw_speed(ui::Ui& ui, PlayHead& head, Flow& flow) {
    if (flow.button("Slower", {K::Hyphen})) head.speed = slower(head.speed);
    const std::string now = speed_words(head.speed);
    const float wide = 2.8f * ImGui::GetFontSize();
    flow.next(wide + 2.0f * ImGui::GetStyle().FramePadding.x + ImGui::CalcTextSize("Faster").x);
    const float x = ImGui::GetCursorPosX();
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted(now.c_str());
    ImGui::SameLine();
    ImGui::SetCursorPosX(x + wide);
    if (ui.button("Faster", {K::Equal})) head.speed = faster(head.speed);
}

}  // namespace

Went draw_play_controls(ui::Ui& ui, PlayHead& head, const Playback& playback) {
    Flow flow(ui);
    if (flow.toggle("Play", chosen_if(head.playing == Playing::yes), {K::Space}, "Play, or pause"))
        play_or_pause(head, playback);
    if (flow.button("Previous stroke", {K::LBracket}, "Start of this stroke, or of the previous one"))
        previous_stroke(head, playback);
    if (flow.button("Previous frame", {K::Comma})) step_frames(head, playback, -1);
    if (flow.button("Next frame", {K::Period})) step_frames(head, playback, 1);
    if (flow.button("Next stroke", {K::RBracket}, "Start of the next stroke")) next_stroke(head, playback);
    if (flow.toggle("Loop", chosen_if(head.looping == Looping::yes), {K::L}, "Repeats this stroke"))
        head.looping = head.looping == Looping::yes ? Looping::no : Looping::yes;
    draw_speed(ui, head, flow);
    const bool went =
        flow.button("First interference", {K::I}, "Where the strip first hits a tool or the press",
                    ui::enabled_if(!playback.interferences.empty()));
    return went && go_to_first_interference(head, playback) ? Went::to_an_interference : Went::nowhere_else;
}

}  // namespace overbend::window
