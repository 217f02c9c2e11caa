// The kinds of work: what a punch and a die make of bends together, and how they take the strip. Each kind
// stands in a file of its own, work_NAME.cpp, and all that there are stand in work_kinds(). Which tools are for
// it, the kinds of tools say themselves (kind.h).
//
// Units  mm, rad.

#pragma once

#include <array>
#include <variant>

#include "scenes/files/case/blank.h"
#include "scenes/files/case/case.h"
#include "sim/plan/stroke_path.h"

namespace overbend::files {

class StrictTable;

// How a step's tools take the strip. Left and right as it lies in the press.
struct Hold {
    double reach_left = 0.0;   // how far from the left bend line they may press it
    double reach_right = 0.0;  // and from the right one
    double level_at = 0.0;     // blank position about which it lies level before the stroke,
    double half_span = 0.0;    // so far to either side,
    double at_x = 0.0;         // and where that position lies, from the punch's axis
    double depth = 1e300;      // how deep the punch's lowest point may go below the die's top face
};

struct WorkKind {
    Work work = Work::any;
    const char* stroke = "";  // "a V stroke": what messages call it
    int bends = 0;            // that a stroke makes at once; 0: as many as it likes
    bool alike = true;        // two bends turn the same way
    double sense = 1.0;       // of its (left) bend as it lies: +1 turns the right-hand side up
    bool lays_hem = false;    // what was bent sharply before is laid flat: no angle is a stop
    bool takes_pad = false;
    bool needs_clamp = false;

    // What the file says of a step is complained of at its table. Absent: nothing but what holds for all.
    void (*check_step)(const StrictTable& table, const Step& step, const Case& job) = nullptr;
    // How the die takes the strip.
    Hold (*hold)(const Case& c, const Blank& blank, const Step& step) = nullptr;
    // Sizes of the path that the strip goes, for planning. Absent: none is known.
    void (*set_path)(const Case& c, const Blank& blank, const Step& step, plan::StrokePath& path) = nullptr;
    // Where a tool's own middle stands, from the punch's axis. Absent: on it.
    double (*stands_at)(const Case& c, const Step& step, const Tool& tool) = nullptr;
};

WorkKind vee_work();
WorkKind radius_work();
WorkKind offset_work();
WorkKind channel_work();
WorkKind hem_work();
WorkKind wiping_work();
WorkKind outline_work();  // of outlines with one another: whatever they make
const std::array<WorkKind, 7>& work_kinds();

// Of a tool; a pad and a clamp, which serve many, have that of outlines.
const WorkKind& work_of(const Tool& tool);
// Of a step: its punch's, or its die's where the punch is an outline.
const WorkKind& work_of(const Case& c, const Step& step);

// Throws OutOfRange for a punch and a die that do not go together.
void check_pair(const Tool& punch, const Tool& die, int die_face, double thickness);

// What a V groove or an open die holds the strip over; of any other die an opening of 0.
struct Shoulders {
    double opening = 0.0, radius = 0.0;
    const tool::VeeFace* groove = nullptr;  // null: open below
};
Shoulders shoulders_of(const Tool& die, int die_face);

// ---- for the kinds

template <class Shape>
const Shape* shape_of(const Tool& tool) {
    return std::get_if<Shape>(&tool.shape);
}

// A hold about the middle of the step's bends that reaches as far to either side.
Hold even_hold(const Blank& blank, const Step& step, double reach, double half_span, double depth);

// A hold over two shoulders, for the step's one bend.
Hold hold_over(const Case& c, const Blank& blank, const Step& step, double opening, double shoulder_radius,
               double depth);

// The flats beside a bend, left and right as it lies.
struct FlatsBeside {
    double left = 0.0, right = 0.0;
};
FlatsBeside flats_beside(const Case& c, const Step& step, int bend);
// The way along the blank that leads to the right as it lies: 1 or -1.
double blank_to_the_right(const Step& step);

// Half a blank's length that is bent by an angle round a tool's radius, and a thickness beside it.
double half_core(double radius, double thickness, double angle);

// A strip is bent to the drawing's radius, or wider round a nose that is larger.
double made_radius(const Case& c, const Step& step, double nose);

// How far a pad in a channel goes before it or its spring is solid.
double pad_travel(const Pad& pad, const tool::ChannelDie& die);

// A bend that is drawn so sharp is laid flat.
bool is_hem(const Bend& bend);

}  // namespace overbend::files
