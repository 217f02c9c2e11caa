// The kinds of work: what a punch and a die make of bends together, and how they take the strip. Each kind
// stands in a file of its own, work_NAME.cpp, and all that there are stand in work_kinds(). Which tools are
// for it, the kinds of tools say themselves (kinds.h).
//
// Units  mm, rad.

#pragma once

#include <array>
#include <string>
#include <utility>
#include <variant>
#include <vector>

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

// Tools that are not there yet.
struct ProposedTools {
    std::vector<Tool> tools;
    std::vector<std::string> reasons;  // one a tool: what made it so
    std::vector<std::string> cannot;   // bends for which there is no tool, with the reason

    void add(const std::string& name, const ToolShape& shape, const std::string& reason);
};

// Which of a step's tools may be changed: those that are not made yet.
struct MayChange {
    bool punch = false, die = false;
};

// What tools lack to make a bend.
struct Shortfall {
    std::string why;    // empty: nothing
    double miss = 1.0;  // of what is needed, the share that is missing, 0 to 1; 1 for what cannot be measured
};

struct WorkKind {
    Work work = Work::any;
    const char* stroke = "";  // "a V stroke": what messages call it
    int bends = 0;            // that a stroke makes at once; 0: as many as it likes
    bool alike = true;        // two bends turn the same way
    double sense = 1.0;       // of its (left) bend as it lies: +1 turns the right-hand side up
    bool lays_hem = false;    // what was bent sharply before is laid flat: no angle is a stop
    bool needs_clamp = false;
    // How near springback came to that of finite elements in the worst of the strokes that were compared
    // (assets/manual/accuracy.md; tests/outside/closing.cpp holds it against them); 0: none was.
    double agreed = 0.0;

    // What the file says of a step is complained of at its table. Absent: nothing but what holds for all.
    void (*check_step)(const StrictTable& table, const Step& step, const Case& job) = nullptr;
    // How the die takes the strip.
    Hold (*hold)(const Case& c, const Blank& blank, const Step& step) = nullptr;
    // Where a tool's own middle stands, from the punch's axis. Absent: on it.
    double (*stands_at)(const Case& c, const Step& step, const Tool& tool) = nullptr;
    // How far a pad goes in a die before it or its spring is solid; 0: it does not go in. Absent: none does.
    double (*pad_travel)(const Pad& pad, const Tool& die) = nullptr;

    // ---- planning: a kind without a path is not planned, what else is absent is not done

    // Sizes of the path that the strip goes.
    void (*set_path)(const Case& c, const Blank& blank, const Step& step, plan::StrokePath& path) = nullptr;
    // Length of strip that counts with the bend's whole moment when it springs back; arc: the bend's own.
    // Absent: half the arc and the arm beside it.
    double (*springing_length)(double arc, double thickness) = nullptr;
    // The greatest bend angle under load that the punch allows. Absent: any.
    double (*most_loaded)(const Tool& punch) = nullptr;
    // Why a step's tools, which go together, do not make its bends. Absent: they always do.
    Shortfall (*misfit)(const Case& c, const Blank& blank, const Step& step) = nullptr;
    // Tools for these bends; for two only where their angles are alike and within this range.
    ProposedTools (*propose)(const Case& c, const Blank& blank, const std::vector<int>& bends) = nullptr;
    Range proposed_for = {};  // rad
    // Gives the tools so much more overbend. What was done, in words; empty: nothing can be.
    std::string (*overbend)(Tool& punch, Tool& die, int die_face, double more, MayChange may) = nullptr;
    // What says how far a step's two bends stand apart, along the strip between them; and another such size
    // for punch, die and pad together, so that the gaps between them stay. pad: null where there is none.
    double (*pair_size)(const Tool& punch, const Tool& die) = nullptr;
    void (*resize_pair)(Tool& punch, Tool& die, Tool* pad, double size) = nullptr;
    // The radius of the nose that the arcs of its bends follow; null: the tool has none.
    double* (*nose)(Tool& tool) = nullptr;
    // Where the die has a corner that must be like it. Absent: it has none.
    double* (*other_nose)(Tool& die) = nullptr;
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

// How near a step's springback may be said to be, rad; 0: nothing like it was compared. Pads on springs never
// were.
double agreement(const Case& c, const Step& step);

// Of a punch and a die that are of one kind; else null.
const WorkKind* shared_work(const Tool& punch, const Tool& die);

// Throws OutOfRange for a punch and a die that do not go together.
void check_pair(const Tool& punch, const Tool& die, int die_face, double thickness);

// What a V groove or an open die holds the strip over; of any other die an opening of 0.
struct Shoulders {
    double opening = 0.0, radius = 0.0;
    const tool::VeeFace* groove = nullptr;  // null: open below
    double opening_at_corners() const;
};
Shoulders shoulders_of(const Tool& die, int die_face);

// Two bends that a stroke of this kind makes at once, as far as their senses go; and of like angles.
bool are_its_pair(const WorkKind& work, const Bend& left, const Bend& right);
bool have_like_angles(const Bend& left, const Bend& right);

// How the halves move in this step, up to the drawing's angle and what it springs back by rule; its tools
// must be of a kind that has a path.
plan::StrokePath stroke_path(const Case& c, const Blank& blank, const Step& step);
// In a stroke of these bends between these two tools instead of the case's.
plan::StrokePath path_between(const Case& c, const Blank& blank, const std::vector<int>& bends,
                              const Tool& punch, const Tool& die);

// Curvature that a bend springs back by, by rule: the blank's, or calculated.
double springback_curvature(const Case& c, const Blank& blank, int bend);

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

// How far apart two parallel flats are, mid-line to mid-line, that a pair of opposite bends joins, mm.
double drawn_step(const Case& c, int left_bend);

// Between the faces of closed tools that are proposed, thicknesses; from simulated strokes, no other source.
constexpr double closed_gap = 1.05;

// Tools are made, and read off a drawing, in hundredths of a millimetre.
double hundredth(double value);
double halves_up(double value);  // up to half millimetres and degrees
// "'hook' and 'lip'": two neighbours.
std::string pair_of_bends(const Case& c, int left_bend);
// "it closes at 88.0 degrees; 91.5 are needed under load"; empty: it reaches what is needed.
Shortfall closes_early(double reached, double needed);
// What the planner adds to an angle of tools: up to whole degrees.
double whole_degrees_up(double angle);
// "'block' now has a groove of 82.0 degrees, for the overbend"
std::string overbend_words(const Tool& tool, const char* what, double angle);

// A bend that is drawn so sharp is laid flat.
bool is_hem(const Bend& bend);

}  // namespace overbend::files
