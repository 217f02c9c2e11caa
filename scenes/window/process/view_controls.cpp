// How the job is looked at.

#include <imgui.h>

#include "scenes/window/process/controls.h"
#include "scenes/window/shared/flow.h"

namespace overbend::window {

namespace {

using K = sf::Keyboard;

constexpr double key_zoom = 1.25, key_pan = 0.1;

void draw_lens(ui::Ui& ui, ViewChoice& choice, Flow& flow) {
    flow.boxed("lens", 13.5 * ImGui::GetFontSize(), [&] {
        int now = static_cast<int>(choice.lens);
        ui.choice("Magnifier", now, {"none", "at the bend", "at the pointer"});
        if (ui.key("Magnifier: none, at the bend, at the pointer", {K::M})) now = (now + 1) % 3;
        choice.lens = static_cast<LensFollows>(now);
    });
}

void draw_colours(ui::Ui& ui, ViewChoice& choice, Flow& flow) {
    flow.boxed("colours", 12.5 * ImGui::GetFontSize(), [&] {
        int now = static_cast<int>(choice.colouring);
        ui.choice("Colours", now, {"hoop stress", "plastic strain"});
        if (ui.key("Colours: hoop stress, plastic strain", {K::C})) now = 1 - now;
        choice.colouring = static_cast<picture::Colouring>(now);
    });
}

// Of the stroke that is shown: its first bend, then the next one.
void mark_bend(const Playback& playback, const PlayHead& head, std::optional<SectionMark>& mark) {
    const int stroke = stroke_at(playback, head.at);
    const picture::ShownStroke& shown = playback.shown.strokes[stroke];
    const std::vector<picture::BendMark>& bends = shown.bends;
    if (bends.empty()) return;
    std::size_t next = 0;
    for (std::size_t b = 0; b < bends.size(); ++b)
        if (mark && mark->blank_position == bends[b].blank_position) next = (b + 1) % bends.size();
    mark = SectionMark{bends[next].blank_position, shown.recording->layers() - 1, !shown.upper_face_up};
}

// Along the strip, or through its thickness.
void move_mark(const Playback& playback, double along, int layers, SectionMark& mark) {
    const stroke::Recording& r = *playback.shown.strokes.front().recording;
    const double end = std::max(r.blank_position.front(), r.blank_position.back());
    mark.blank_position = std::clamp(mark.blank_position + along, 0.0, end);
    mark.layer = std::clamp(mark.layer + layers, 0, r.layers() - 1);
}

void draw_zoom(ui::Ui& ui, PictureArea& picture, Flow& flow) {
    if (flow.button("Fit", {K::F}, "Shows the whole picture; so does a double click")) picture.fit();
    if (flow.button("Zoom in", {K::E}, "Or turn the mouse wheel")) picture.zoom_by(key_zoom);
    if (flow.button("Zoom out", {K::Q}, "Or turn the mouse wheel")) picture.zoom_by(1.0 / key_zoom);
    const auto pan = [&](const char* words, K::Key key, double right, double up) {
        if (ui.key(words, {key})) picture.pan_by(right, up);
    };
    pan("Pan left", K::A, -key_pan, 0.0);
    pan("Pan right", K::D, key_pan, 0.0);
    pan("Pan up", K::W, 0.0, key_pan);
    pan("Pan down", K::S, 0.0, -key_pan);
}

void draw_section(ui::Ui& ui, const Playback& playback, const PlayHead& head,
                  std::optional<SectionMark>& mark, Flow& flow) {
    if (flow.button("Section", {K::N}, "Stress through the thickness at the bend; or click the strip"))
        mark_bend(playback, head, mark);
    if (!mark) return;
    const double step = 0.25 * playback.job->c.thickness;
    const auto move = [&](const char* words, const ui::Key& key, double along, int layers) {
        if (ui.key(words, key)) move_mark(playback, along, layers, *mark);
    };
    move("Section to the blank's left", {K::Comma, false, true}, -step, 0);
    move("Section to the blank's right", {K::Period, false, true}, step, 0);
    move("Layer above", {K::W, false, true}, 0.0, 1);
    move("Layer below", {K::S, false, true}, 0.0, -1);
}

}  // namespace

ViewChoice remembered_choice(const Remembered& r) {
    ViewChoice choice;
    if (!r.lens) choice.lens = LensFollows::nothing;
    if (r.lens && r.lens_at_pointer) choice.lens = LensFollows::pointer;
    if (r.plastic_strain) choice.colouring = picture::Colouring::plastic_strain;
    if (!r.charts) choice.charts = picture::Charts::hidden;
    choice.springback_scale = r.springback_scale;
    return choice;
}

void remember_choice(const ViewChoice& choice, Remembered& r) {
    r.lens = choice.lens != LensFollows::nothing;
    r.lens_at_pointer = choice.lens == LensFollows::pointer;
    r.plastic_strain = choice.colouring == picture::Colouring::plastic_strain;
    r.charts = choice.charts == picture::Charts::shown;
    r.springback_scale = choice.springback_scale;
}

void draw_view_controls(ui::Ui& ui, ViewChoice& choice, PictureArea& picture, const Playback& playback,
                        const PlayHead& head, std::optional<SectionMark>& mark) {
    Flow flow(ui);
    draw_zoom(ui, picture, flow);
    draw_section(ui, playback, head, mark, flow);
    const bool room =
        playback.options.charts == picture::Charts::shown || choice.charts == picture::Charts::hidden;
    if (flow.toggle("Charts", ui::chosen_if(choice.charts == picture::Charts::shown), {K::H},
                    room ? "Figures and the force curve beside the strip"
                         : "Not enough room for figures and force curve: close a panel, or widen the window",
                    ui::enabled_if(room)))
        choice.charts =
            choice.charts == picture::Charts::shown ? picture::Charts::hidden : picture::Charts::shown;
    draw_lens(ui, choice, flow);
    draw_colours(ui, choice, flow);
    flow.boxed("springback", 18.0 * ImGui::GetFontSize(), [&] {
        ui.slider("Springback", choice.springback_scale, 1.0, 20.0, "%.1f times",
                  "How many times larger the springback is drawn");
    });
}

}  // namespace overbend::window
