// The arc of a bend angle on a picture, from one flat's run-on line to the other flat, and where its words
// stand: in one place for a whole stroke, so that they can be read while the strip moves.
//
// Units  rad, directions as seen on the picture (y down); picture pixels.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "render/picture/bend_mark.h"
#include "render/picture/view.h"

namespace overbend::picture {

struct AngleArc {
    Point corner = Point::Zero();
    double from = 0.0;  // direction of the run-on line
    double to = 0.0;    // direction of the flat
    double radius = 0.0;
    double middle() const { return 0.5 * (from + to); }
};

// With a radius of its own, as wide as the shorter flat allows and not out of the stage; or with a given one.
AngleArc angle_arc(const stroke::Recording& recording, const View& view, const MeasuredBend& bend,
                   double unit);
AngleArc arc_of_radius(const stroke::Recording& recording, const View& view, const MeasuredBend& bend,
                       double radius);
Point on_arc(const AngleArc& arc, double radius, double direction);

// Whether a bend is turned far enough for an arc of its angle to be seen.
bool has_arc(const MeasuredBend& bend);

// The words of a bend's angle are this large, and stand line below line on a plate so wide.
double angle_letters(double unit);
double angle_line_height(double unit);
Rect angle_plate(const Point& corner, const std::vector<std::string>& lines, double unit);

// For each bend the box of its words, two lines high: near the arc, off tools' names, magnifier and keys, and
// off the strip for as much of the stroke as can be, at its stop and in the end in any case; else none.
std::vector<std::optional<AnglePlace>> place_angles(const stroke::Recording& recording, const View& view,
                                                    const Layout& layout, const std::vector<BendMark>& bends);

// Whether the strip leaves these words alone in a state.
bool off_strip(const Rect& words, const stroke::State& state, double thickness, const View& view,
               double unit);

// The longest words that a bend's angle may have, line by line.
std::vector<std::string> longest_angle_words(const BendMark& mark, const Layout& layout);

}  // namespace overbend::picture
