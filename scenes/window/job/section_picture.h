// The clicked section: its mark on the picture, and its charts.

#pragma once

#include "render/chart/section_now.h"
#include "render/picture/stage.h"

namespace overbend::window {

// A cut across the strip, with a ring at the middle of the layer. Nothing where it is out of the stage.
void add_section_mark(picture::DrawingList& list, const stroke::Recording& recording,
                      const stroke::State& drawn, const picture::View& view, double blank_position, int layer,
                      picture::Theme theme);

// Stress, plastic strain and moment, one below the other; where there is no room for three, the one of stress
// and strain that the colours show, and the moment. letter: px, of the smallest words.
picture::DrawingList draw_section(const chart::SectionNow& section, int width, int height, double letter,
                                  picture::Theme theme, picture::Colouring colouring);

}  // namespace overbend::window
