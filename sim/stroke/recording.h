// What is kept of a stroke: enough for every picture and number made of it afterwards. Plain data.
//
// Units  mm, rad, MPa, N per mm of strip width. Press coordinates (see sim/tool/tool_set.h).

#pragma once

#include <Eigen/Core>
#include <string>
#include <vector>

#include "sim/tool/tool_set.h"

namespace overbend::stroke {

// Where the stroke is: the strip lies in the press, is pressed, is held under the punch, the punch goes back,
// nothing touches the strip.
enum class Phase { placed, pressing, held, retracting, free };

struct ContactForce {
    Eigen::Vector2d at = Eigen::Vector2d::Zero();     // on the strip's surface
    Eigen::Vector2d force = Eigen::Vector2d::Zero();  // on the strip, N per mm
    int tool = 0;                                     // index into Recording::tools
};

struct State {
    Phase phase = Phase::placed;
    double travel = 0.0;                 // of the punch since first touch, down positive; negative before it
    double punch_force = 0.0;            // N per mm, upward on the punch
    std::vector<double> x, y, theta;     // nodes
    std::vector<double> stretch;         // of the mid-line, per element
    std::vector<double> curvature;       // per element, 1/mm of reference length
    std::vector<double> warp;            // material::warps a node (sim/material/section_shape.h); empty: none
    std::vector<float> hoop_stress;      // MPa, element e's layer k at e * layers + k
    std::vector<float> plastic_strain;   // accumulated equivalent, the same shape
    std::vector<ContactForce> contacts;  // sums over neighbouring points: one entry a patch
    std::vector<double> compression;     // of each tool's spring, mm, 0 without one; empty: of none
};

struct Recording {
    double thickness = 0.0;
    std::vector<double> blank_position;  // nodes
    std::vector<double> layer_height;    // from lower to upper surface
    std::vector<double> layer_weight;
    tool::ToolSet tools;
    std::vector<State> states;  // in the order they came; the first is placed, the last is free

    int layers() const { return static_cast<int>(layer_height.size()); }
};

// Index of the last state under the punch: at the stop, or where an unsolved stroke ended; -1: none.
inline int loaded_state(const Recording& recording) {
    int loaded = static_cast<int>(recording.states.size()) - 1;
    while (loaded >= 0 && recording.states[loaded].phase > Phase::held) --loaded;
    return loaded;
}

// Position of a tool: lowered by the travel when it goes with the ram, moved back by its spring's
// compression, drawn back once the strip does not lie as placed any more.
inline Eigen::Vector2d tool_position(const tool::RigidTool& t, double travel, double compression,
                                     Phase phase = Phase::pressing) {
    const double down = t.moves_with_ram() ? travel : 0.0;
    const double back = phase == Phase::placed ? 0.0 : t.draws_back;
    return {t.position.x() + back, t.position.y() - down + t.gives_way() * compression};
}
// Of tool k in a state.
inline Eigen::Vector2d tool_position(const tool::ToolSet& tools, int k, const State& s) {
    const bool sprung = k < static_cast<int>(s.compression.size());
    return tool_position(tools[k], s.travel, sprung ? s.compression[k] : 0.0, s.phase);
}

}  // namespace overbend::stroke
