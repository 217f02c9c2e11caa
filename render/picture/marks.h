// Marks put on a drawing list, each over those before it: filled and drawn paths, words, the bar of a scale.
//
// Units  pixels, and px a mm for the scale.

#pragma once

#include <string>
#include <vector>

#include "render/picture/drawing_list.h"

namespace overbend::picture {

void add_fill(DrawingList& list, Path path, const Colour& fill);
void add_line(DrawingList& list, Path path, const Colour& colour, double width,
              std::vector<double> dash = {});
void add_line(DrawingList& list, const Point& a, const Point& b, const Colour& colour, double width,
              std::vector<double> dash = {});
// Filled, with an edge.
void add_shape(DrawingList& list, Path path, const Colour& fill, const Colour& edge, double width);

// At its base line; nothing where there are no words.
void add_text(DrawingList& list, const std::string& words, const Point& at, double size, const Colour& colour,
              Across across = Across::left, Weight weight = Weight::normal);

// The same with the capitals' middle at that height.
void add_text_on_middle(DrawingList& list, const std::string& words, const Point& at, double size,
                        const Colour& colour, Across across = Across::left, Weight weight = Weight::normal);

// A bar of a round length with its words of size `unit`, its lower left corner at `at`; at most `longest`.
void add_scale_bar(DrawingList& list, const Point& at, double pixels_per_mm, double longest, double unit);

}  // namespace overbend::picture
