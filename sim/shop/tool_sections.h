// Straight cuts through a tool's outline: every place where it might fail, measured once.
//
// A cut runs inside the solid from one point of the boundary to another. An outline has no holes, so a single
// cut always parts it in two, and what acts on the one part is what the cut carries: statics alone, whatever
// the shape. Cuts run in twelve directions 15 degrees apart, close together and beside every corner, so
// that necks, legs of a groove, the toe of an L-shaped foot and steps are met where they are thinnest.
//
// Units  mm, the tool's own coordinates.

#pragma once

#include <vector>

#include "sim/tool/arc_outline.h"

namespace overbend::shop {

// The face at which the press holds a tool: a punch by its top, a die, a pad by its bottom.
enum class HeldBy { top, bottom };

struct Cut {
    tool::Vec2 from = tool::Vec2::Zero(), to = tool::Vec2::Zero();  // `from` lies at `low`
    double thickness = 0.0;                                         // from one to the other
    double low = 0.0,
           high = 0.0;  // how far along the boundary either end lies, low < high: what lies between
                        // is the part to the right of the cut, walked from one end to the other
    // It takes no more than a corner off the held face: one end is on that face, the other on the side that
    // begins at its end. Nothing but the reaction of the held face presses on such a chip, and the holder
    // gives that where it is stiff: no place where a tool fails. A cut from the held face to the floor of a
    // groove is none: beyond it lies a whole half of the tool.
    bool chip = false;
};

// A level stretch of the face that a tool is held by, as the boundary runs.
struct HeldStretch {
    tool::Vec2 from = tool::Vec2::Zero(), to = tool::Vec2::Zero();
    double along = 0.0;  // of `from`
    double length() const { return (to - from).norm(); }
};

struct ToolSections {
    std::vector<tool::Vec2> boundary;  // closed, counter-clockwise; the first point is not repeated
    std::vector<double> along;  // length from the first point to each, and round to it again at the end
    std::vector<Cut> cuts;
    std::vector<HeldStretch> held;  // one or more: a die with a groove below stands on either side of it
};

// Of the held face: its length in all, and from its leftmost to its rightmost point, mm; its middle.
double held_length(const ToolSections& sections);
double held_width(const ToolSections& sections);
tool::Vec2 held_middle(const ToolSections& sections);

// Throws OutOfRange: no straight level face at the top or the bottom to be held by.
ToolSections sections_of(const tool::ArcOutline& outline, HeldBy held);

// How far along the boundary its point nearest to this one lies.
double place_along(const ToolSections& sections, const tool::Vec2& at);

}  // namespace overbend::shop
