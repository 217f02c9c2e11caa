// The strains of a recorded strip's sections, from which their heights and stretches follow
// (sim/material/section_shape.h).
//
// Units  mm, 1/mm.

#pragma once

#include "sim/material/section_shape.h"
#include "sim/stroke/recording.h"

namespace overbend::stroke {

// Of an element: its own stretch and curvature, the mean of its nodes' gradients of the warp.
material::SectionStrain section_of(const Recording& recording, const State& state, int element);

// At a node: the mean of both elements'. Surfaces have the heights of the sections at the nodes there, and
// lie straight between them.
material::SectionStrain section_at_node(const Recording& recording, const State& state, int node);

}  // namespace overbend::stroke
