// Any section of the strip at any instant of a stroke: the stress and the plastic strain of its layers,
// and its moment over curvature up to then. The axes cover the whole stroke, so that they stay fixed.
//
// Units  mm, 1/mm, MPa, N mm per mm of width.

#pragma once

#include <optional>
#include <vector>

#include "render/chart/bent_section.h"
#include "render/chart/frame.h"

namespace overbend::chart {

struct SectionNow {
    double blank_position = 0.0;       // mm, of the element's middle
    double sense = 1.0;                // -1: curvature and moment of the strip as it lies have the other sign
    double lower = 0.0, upper = 0.0;   // mm, its surfaces over the mid-line, lower < upper
    std::vector<LayerPoint> layers;    // from the lower to the upper surface
    std::optional<int> marked;         // index of a layer
    SectionPoint at;                   // curvature and moment now
    SectionPath path;                  // as far as the stroke has come
    std::vector<SectionPoint> before;  // of earlier strokes, seen as the strip lies now
    Extent height, stress, plastic_strain, curvature, moment;  // of the whole stroke
};

// instant: index of a recorded state, with the part of the way to the next one.
// Throws OutOfRange: a recording or instant that cannot be.
SectionNow section_now(const stroke::Recording& recording, double instant, double blank_position,
                       std::optional<int> marked_layer = {});

// An earlier stroke of the same strip, whose path leads up to this one's.
enum class Faces { as_now, turned_over };  // how the strip lay then: turned over, it bent the other way
void put_before(SectionNow& section, const stroke::Recording& earlier, Faces faces);

// Each into a box. Throws OutOfRange: a box without room.
void add_stress_now(picture::DrawingList& list, const picture::Rect& box, const SectionNow& section,
                    const ChartLook& look);
void add_plastic_strain_now(picture::DrawingList& list, const picture::Rect& box, const SectionNow& section,
                            const ChartLook& look);
void add_moment_so_far(picture::DrawingList& list, const picture::Rect& box, const SectionNow& section,
                       const ChartLook& look);

}  // namespace overbend::chart
