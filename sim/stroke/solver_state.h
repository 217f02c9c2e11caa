// What is carried from one accepted state of a stroke to the next. Plain data, copied to go back to.
//
// Units  mm, rad, MPa, N per mm width.

#pragma once

#include <vector>

#include "sim/strip/strip_state.h"
#include "sim/stroke/audit.h"
#include "sim/stroke/contact.h"
#include "sim/stroke/recording.h"

namespace overbend::stroke {

struct SolverState {
    strip::StripState strip;
    std::vector<double> u;                     // strip::node_unknowns of every node in turn, then the
                                               // compression of every spring
    std::vector<double> stress, width_stress;  // layers, MPa
    std::vector<double> stretch, curvature;    // elements
    std::vector<double> flow;                  // layers, of the last increment
    std::vector<double> active;                // part of each element's moment carried by yielded layers
    std::vector<double> length_scale_moment;   // of the length-scale term on the nodes, N mm per mm
    double friction_rate = 0.0;                // of the last increment, N mm per mm of the ram and mm width
    std::vector<double> last_move;             // of u in the last increment
    std::vector<double> move_before;           // and in the one before it
    double last_ram_move = 0.0;                // 0: there is none to go on from
    double ram_move_before = 0.0;
    std::vector<double> compression;  // of each tool's spring, 0 without one
    double load_fraction = 1.0;       // of the weight and of clamps in the frame that is on
    // Stored in the strip, in the contacts and in the springs, N mm per mm.
    double elastic_energy = 0.0, contact_energy = 0.0, spring_energy = 0.0;
    double travel = 0.0;
    double punch_force = 0.0;            // upward on what moves with the ram
    double squeeze = 0.0;                // with which tools press the strip from both sides at one place
    std::vector<ContactForce> contacts;  // of the last increment, one a patch
    std::vector<HeldGroup> held;         // tractions of friction there
    Audit audit;
    int increments = 0;
    int iterations = 0;
    int recorded = 0;      // states of the recording up to here
    int curve_points = 0;  // of the force-travel curve up to here
};

}  // namespace overbend::stroke
