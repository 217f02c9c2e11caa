// Below the picture: the buttons and keys that play a film, and how the job is looked at: magnifier, colours,
// charts, springback, zoom, and the section at the bend.

#pragma once

#include "scenes/window/job/play_head.h"
#include "scenes/window/process/picture_area.h"
#include "scenes/window/shared/remembered.h"

namespace overbend::window {

enum class Went { nowhere_else, to_an_interference };
Went draw_play_controls(ui::Ui& ui, PlayHead& head, const Playback& playback);

struct ViewChoice {
    LensFollows lens = LensFollows::bend;
    picture::Colouring colouring = picture::Colouring::hoop_stress;
    picture::Charts charts = picture::Charts::shown;
    double springback_scale = 1.0;  // 1 to 20
};

ViewChoice remembered_choice(const Remembered& remembered);
void remember_choice(const ViewChoice& choice, Remembered& remembered);

void draw_view_controls(ui::Ui& ui, ViewChoice& choice, PictureArea& picture, const Playback& playback,
                        const PlayHead& head, std::optional<SectionMark>& mark);

}  // namespace overbend::window
