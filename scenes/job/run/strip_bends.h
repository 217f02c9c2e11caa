// The kinds of work on one strip, from plain sizes: what the command `bend`, the springback bench and most
// checks press. Each makes a case of its tools and of one step (a hem: two), which is set up as a case's
// steps are; a draw alone, which no case knows, is a work of its own.
//
// Units  mm, rad, N per mm of strip width. Absent sizes: as said beside them.
// Throws OutOfRange for tools that cannot be or do not fit one another or the strip.

#pragma once

#include <optional>

#include "scenes/job/run/strip_stroke.h"

namespace overbend::job {

// One V bend: air bending, bottoming and coining.
struct VeeBend : StripOptions {
    double die_opening = 8.0;  // between the shoulder arcs' centres
    double shoulder_radius = 1.0;
    double nose_radius = 1.0;
    std::optional<double> die_angle;  // included angle of the groove; absent: open below the shoulders
    double bottom_radius = 0.4;       // of the groove
    double punch_angle = 0.5235987755982988;  // included angle of the wedge; 30 degrees
    std::optional<double> flange;             // each half's length; absent: two die openings
    std::optional<double> left_flange;        // of the left half, where it has another length
    double off_centre = 0.0;                  // offset of the strip's middle to the right of the punch's axis
};
StripCase vee_case(const VeeBend& bend);
StripStroke vee_stroke(const VeeBend& bend);

// Below an open die's shoulders there is room for so many die openings of travel; long before, a strip of
// ordinary length has slipped through.
constexpr double open_die_travel = 2.5;

struct VeeResult : BendReading {
    stroke::StrokeResult stroke;
};
VeeResult bend_vee(const VeeBend& bend, const stroke::Stop& stop, const stroke::StrokeOptions& options);

// An offset: both bends of an S or a Z made in one stroke between two stepped tools; the left one turns up.
// Refuses gravity: nothing holds the strip up on the left.
struct OffsetBend : StripOptions {
    double offset = 5.0;                // step between the lands
    double angle = 0.785398163397448;   // of the sloped faces, rad; 45 degrees
    double corner_radius = 1.0;         // of the convex corners of both tools
    std::optional<double> root_radius;  // of the concave ones; absent: half a thickness
    std::optional<double> clearance;    // between the closed faces; absent: 1.05 thicknesses
    std::optional<double> land;    // of both tools beyond the sharp corners; absent: 8 thicknesses and what
                                   // the corners take
    std::optional<double> flange;  // each half's length from the middle of the slope; absent: as far as the
                                   // lands reach
};
StripStroke offset_stroke(const OffsetBend& bend);

// A channel bent in one stroke round a flat foot, with or without a pad on a spring under the foot.
struct ChannelBend : StripOptions {
    double punch_width = 20.0;
    double corner_radius = 2.0;       // of the punch's foot
    std::optional<double> clearance;  // between foot and wall; absent: 1.1 thicknesses
    double shoulder_radius = 2.0;     // of the die
    double depth = 12.0;           // of the channel, from the die's top face to where the strip ends its way
    std::optional<double> flange;  // of the strip on either side of the foot; absent: as high as the
                                   // channel is deep, with the shoulder
    std::optional<tool::Spring> pad;  // absent: a floor, without a pad. Its travel is the channel's depth
};
StripStroke channel_stroke(const ChannelBend& bend);

// A flange wiped down over the edge of a block by a punch that passes beside it, the strip held by a clamp.
struct WipingBend : StripOptions {
    double edge_radius = 2.0;           // of the die
    double corner_radius = 3.0;         // of the punch
    std::optional<double> clearance;    // between the die's wall and the punch; absent: 1.1 thicknesses
    double flange = 15.0;               // of the strip beyond the die's wall
    std::optional<double> hold;         // length of the strip under the clamp; absent: 10 thicknesses
    std::optional<tool::Spring> clamp;  // absent: the clamp is firm
    files::ClampOn clamp_on = files::ClampOn::frame;
};
StripStroke wiping_stroke(const WipingBend& bend);

// A hem: an acute V bend first, then laid flat between two flat faces. The strip carries its history from the
// first stroke into the second.
struct HemBend : StripOptions {
    double hem = 8.0;                       // length of the strip left of the bend line, which is folded over
    std::optional<double> flange;           // right of it; absent: the hem's and four thicknesses
    double die_opening = 8.0;               // of the first stroke, between the shoulder arcs' centres
    double shoulder_radius = 1.0;           // of its die
    double nose_radius = 0.5;               // of its punch
    double first_free = 2.617993877991494;  // bend angle after the first stroke, rad; 150 degrees
};
// The first stroke, with its stop; and the second one, of the strip as the first left it, with the stop of a
// closed hem: the hem above, the flange lying on the flat die.
StripStroke hem_first_stroke(const HemBend& bend);
StripStroke hem_second_stroke(const HemBend& bend, const strip::StripState& bent);

// Both strokes; a measure says what is left between the faces free. When the first stroke is not solved, its
// outcome is the result's, without bends.
struct HemStop {
    std::optional<double> gap;    // mm between the inner faces as it is held, if the strip kept its thickness
    std::optional<double> force;  // N per mm of strip width, instead
};
StripResult bend_hem(const HemBend& bend, const HemStop& stop, const stroke::StrokeOptions& options);

// A strip drawn between two die shoulders by a flat-faced punch, held back by a clamp on either side: each
// piece of the wall has been bent over the shoulder and straightened again. Its mesh is half as fine as that
// of a bend: much of the strip is bent, and none of it sharply.
struct DrawBend : StripOptions {
    double punch_width = 50.0;
    double corner_radius = 5.0;       // of the punch
    std::optional<double> clearance;  // between punch and wall; absent: 1.1 thicknesses
    double shoulder_radius = 5.0;     // of the die
    double flange = 100.0;            // of the strip on either side of the punch
    tool::Spring clamp{};  // of each clamp, N per mm of strip width; a rate of 0 is a constant force
    double travel = 30.0;  // to which it is to be drawn: the mesh is fine over what it draws in
};
StripStroke draw_stroke(const DrawBend& bend);

// Presses it to its travel. The angles are those between straight lines fitted to the punch's face, the walls
// and the flanges, outside the bends; the walls' mean curvature is a measure, positive when they bulge
// inwards.
StripResult bend_draw(const DrawBend& bend, const stroke::StrokeOptions& options);

}  // namespace overbend::job
