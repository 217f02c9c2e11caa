// One section of the strip through a stroke, from its recording: curvature, moment, stress in its layers.
//
// The moment is the section's own formula (sim/material/section.h) on the recorded layers' stresses:
//   M = - sum_i w_i s_i z_i / lambda_i^2,   lambda_i^2 = G^2 - 2 z_i k
// A bend in a die is not under one moment: it is greatest at one place, and falls to either side. The section
// taken is the one of greatest curvature under load, a single element of the strip.
//
// Units  mm, 1/mm, MPa, N mm per mm of width. Curvature k is the turn over length of the blank; the sense of
// the bend under load makes curvature and moment positive.

#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "render/picture/drawing_list.h"
#include "sim/stroke/recording.h"

namespace overbend::chart {

struct SectionPoint {
    double curvature = 0.0;  // 1/mm
    double moment = 0.0;     // N mm per mm
};

struct BentSection {
    int element = 0;
    double blank_position = 0.0;  // mm, of its middle
    double sense = 1.0;           // -1: the strip turns down as it lies
    int loaded = 0;               // index of the state at the stop
};

// The element of greatest curvature under load with its middle between two blank positions, in either order.
// Throws OutOfRange: no element there; a recording without states.
BentSection find_section(const stroke::Recording& recording, double from, double to);

// The element at a blank position, held at the strip's ends, whether it is bent or not.
// Throws OutOfRange: a recording without states.
BentSection section_at(const stroke::Recording& recording, double blank_position);

// In one state.
SectionPoint section_point(const stroke::Recording& recording, const stroke::State& state,
                           const BentSection& section);

std::vector<picture::Point> points_of(const std::vector<SectionPoint>& path);  // moment over curvature

// A stroke's states up to an instant: to the stop, and from it on.
struct SectionPath {
    std::vector<SectionPoint> loading, unloading;
};
SectionPath section_path(const stroke::Recording& recording, const BentSection& section, double instant);

// Heights of the section's lower and upper surface in one state, mm from the mid-line.
std::pair<double, double> section_surfaces(const stroke::Recording& recording, const stroke::State& state,
                                           const BentSection& section);

// Its layers in one state, from the lower to the upper surface.
struct LayerPoint {
    double height = 0.0;          // mm from the mid-line, in the strip as it is bent
    double stress = 0.0;          // hoop less radial, MPa
    double plastic_strain = 0.0;  // accumulated, -
};
std::vector<LayerPoint> section_layers(const stroke::Recording& recording, const stroke::State& state,
                                       const BentSection& section);

// Heights between which no layer has yielded in this or an earlier stroke: plastic strain falls to nothing
// there, in proportion to the height, from the layers on either side. Absent: nowhere. The whole section when
// nothing has yielded. lower, upper: heights of the section's surfaces.
struct ElasticCore {
    double low = 0.0, high = 0.0;  // mm from the mid-line
};
std::optional<ElasticCore> elastic_core(const std::vector<LayerPoint>& layers, double lower, double upper);

}  // namespace overbend::chart
