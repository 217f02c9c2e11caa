// The strip as it lies in a recorded state: its curved mid-line, its two surfaces and the edges between its
// layers, as points close enough together to look round.
//
// Between two nodes the mid-line is r(xi) = N1 r1 + N2 r2 + L/8 (1 - xi^2) (theta1 - theta2) n(theta(xi)),
// theta linear: a cubic that meets the nodes' directions. A material point lies along the normal n = (-sin
// theta, cos theta), at a node at the height that its section has there (sim/stroke/recorded_section.h),
// between nodes in proportion, as where the tools feel the surfaces.
// Units  mm, rad, press coordinates.

#pragma once

#include <Eigen/Core>
#include <vector>

#include "sim/material/section_shape.h"
#include "sim/stroke/recording.h"

namespace overbend::picture {

using Place = Eigen::Vector2d;  // press coordinates, y up

// A cut through the strip, perpendicular to its mid-line.
struct Station {
    double along = 0.0;  // element's index + part of the element, 0 to the count of elements
    Place middle = Place::Zero();
    double theta = 0.0;
    std::vector<double> edge;  // heights of the layers' edges, from lower to upper surface: layers + 1
    Place at(double height) const;
};

// Throws OutOfRange: no states, arrays that do not fit one another.
void check_recording(const stroke::Recording& recording);

// Stations from the left end to the right one, no further apart than `step` mm along the strip and 0.06 rad
// in turn, each node among them.
std::vector<Station> stations(const stroke::Recording& recording, const stroke::State& state, double step);

// The same for the elements from first to last.
std::vector<Station> stations(const stroke::Recording& recording, const stroke::State& state, double step,
                              int first, int last);

// Heights over the mid-line at a node: of the lower surface, the heights of the shape, the upper surface.
std::vector<double> heights_at_node(const material::SectionShape& shape, const stroke::Recording& recording,
                                    const stroke::State& state, int node);

// Reference heights of the layers' edges: the surfaces, and the middles between neighbouring layers.
std::vector<double> layer_edges(const stroke::Recording& recording);

// The two elements whose middles a place along the strip lies between, and the part of the second.
struct Between {
    int before = 0, after = 0;
    double part = 0.0;
    double blend(double a, double b) const { return (1.0 - part) * a + part * b; }
};
Between between_elements(int elements, double along);

// The value of a layer there, hoop stress or plastic strain: blended from the elements' middles.
double layer_value(const std::vector<float>& values, int layers, int layer, const Between& at);
double layer_value(const std::vector<float>& values, int layers, int layer, double along);

// Neighbouring layers taken together as so many bands: each band's first layer, and the count of layers.
std::vector<int> first_layers(int layers, int bands);

// The strip's outline, closed: along the lower surface and back along the upper one.
std::vector<Place> strip_outline(const std::vector<Station>& at);

// A point of the mid-line by its position along the flat blank, with its direction. Held at the strip's ends.
struct Spot {
    Place at = Place::Zero();
    double theta = 0.0;
};
Spot spot_on(const stroke::Recording& recording, const stroke::State& state, double blank_position);

// The same by element index + part of the element; and the position on the blank as such an index.
Spot spot_along(const stroke::Recording& recording, const stroke::State& state, double along);
double along_at(const stroke::Recording& recording, double blank_position);

// A state between two recorded ones: blend 0 is the first, 1 the second. Everything is blended in proportion;
// a contact force that one of them lacks fades.
stroke::State blended(const stroke::Recording& recording, const stroke::State& a, const stroke::State& b,
                      double blend);

}  // namespace overbend::picture
