#include "scenes/window/process/play_controls.h"

#include <cmath>

#include <imgui.h>

#include "scenes/window/shared/flow.h"
#include "sim/words.h"

namespace overbend::window {

namespace {

using ui::Chosen;
using ui::Enabled;
using K = sf::Keyboard;

std::string speed_words(double speed) {
    return words("\u00d7 %g", std::round(100.0 * speed) / 100.0);
}

void draw_speed(ui::Ui& ui, PlayHead& head, Flow& flow) {
    flow.next_button("Slower");
    if (ui.button("Slower", {K::Hyphen})) head.speed = slower(head.speed);
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
    Flow flow;
    const auto button = [&](const char* words, const ui::Key& key, const char* tip) {
        flow.next_button(words);
        return ui.button(words, key, tip);
    };
    flow.next_button("Play");
    if (ui.toggle("Play", head.playing == Playing::yes ? Chosen::yes : Chosen::no, {K::Space},
                  "Play, or pause"))
        play_or_pause(head, playback);
    if (button("Previous stroke", {K::LBracket}, "Start of this stroke, or of the previous one"))
        previous_stroke(head, playback);
    if (button("Previous frame", {K::Comma}, "")) step_frames(head, playback, -1);
    if (button("Next frame", {K::Period}, "")) step_frames(head, playback, 1);
    if (button("Next stroke", {K::RBracket}, "Start of the next stroke")) next_stroke(head, playback);
    flow.next_button("Loop");
    if (ui.toggle("Loop", head.looping == Looping::yes ? Chosen::yes : Chosen::no, {K::L},
                  "Repeats this stroke"))
        head.looping = head.looping == Looping::yes ? Looping::no : Looping::yes;
    draw_speed(ui, head, flow);
    ui.begin_enabled(playback.interferences.empty() ? Enabled::no : Enabled::yes);
    Went went = Went::nowhere_else;
    if (button("First interference", {K::I}, "Where the strip first hits a tool or the press") &&
        go_to_first_interference(head, playback))
        went = Went::to_an_interference;
    ui.end_enabled();
    return went;
}

}  // namespace overbend::window
