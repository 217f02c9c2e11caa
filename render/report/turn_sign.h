// Signs of the storyboard: how a strip is turned between two strokes; that it hits something.

#pragma once

#include "render/picture/shown_job.h"

namespace overbend::report {

// Arrow round an ellipse: lying for end for end, standing for rolled over, a circle for tipped. radius: px.
void add_turn_sign(picture::DrawingList& list, picture::Turning turning, const picture::Point& centre,
                   double radius, const picture::Colour& colour);

// A cross in a ring: the strip hits something. radius: of the ring, px.
void add_hit_sign(picture::DrawingList& list, const picture::Point& centre, double radius,
                  const picture::Colour& colour);

}  // namespace overbend::report
