// The clicked section: its mark on the picture, and its charts.

#pragma once

#include "render/chart/section_now.h"
#include "render/picture/stage.h"

namespace overbend::scenes {

// A cut across the strip, with a ring at the middle of the layer. Nothing where it is out of the stage.
void add_section_mark(render::DrawingList& list, const stroke::Recording& recording,
                      const stroke::State& drawn, const render::View& view, double blank_position, int layer,
                      render::Theme theme);

// Stress, plastic strain and moment, one below the other; where there is no room for three, the one of stress
// and strain that the colours show, and the moment. letter: px, of the smallest words.
render::DrawingList draw_section(const render::SectionNow& section, int width, int height, double letter,
                                 render::Theme theme, render::Colouring colouring);

}  // namespace overbend::scenes
