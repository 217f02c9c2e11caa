// Least distance of the strip from what stands in the press, away from where the tools press it, in every
// state and between them.
//
// In the forming zone the tools press the strip; anywhere else a touch is an interference. The strip may lie
// on the face of a die, a pad or a clamp, and against the gauge: beside the zone, over half the width of such
// a tool, that is neither an interference nor the least clearance, but an overlap there is.
//
// Units  mm.

#pragma once

#include <vector>

#include "sim/clearance/solid.h"
#include "sim/stroke/recording.h"
#include "sim/stroke/stroke_scene.h"

namespace overbend::clearance {

struct Closest {
    double distance = 1e300;  // < 0: depth of an overlap; 1e300 when all of the strip lies in the zone
    Eigen::Vector2d at = Eigen::Vector2d::Zero();       // on the strip's surface
    Eigen::Vector2d on_tool = Eigen::Vector2d::Zero();  // on the tool's
    double blank_position = 0.0;
    int tool = -1;        // index into the recording's tools
    int state = -1;       // index into the recording's states; of a hit between two, the later one
    double travel = 0.0;  // of the punch then
};

// The recording's tools as solids, made once; its lifetime is the recording's.
class Surroundings {
  public:
    explicit Surroundings(const stroke::Recording& recording);
    const stroke::Recording& recording() const { return *recording_; }
    const Solid& solid(int tool) const { return solids_[tool]; }
    int count() const { return static_cast<int>(solids_.size()); }

  private:
    const stroke::Recording* recording_;
    std::vector<Solid> solids_;
};

// Whether the strip may touch the tool there as it should.
bool may_touch(const tool::RigidTool& tool, double blank_position, const stroke::FormingZone& zone);
// How deep an overlap has to be that counts where it may, over the thickness: a strip that lies on a face is
// some thousandths in it (0.005 in the cases that come along), and the face is not solved for beyond the
// zone.
constexpr double deep_enough = 0.05;

// One state.
Closest least_distance(const Surroundings& surroundings, int state, const stroke::FormingZone& zone);

// Every state in turn.
std::vector<Closest> least_distances(const Surroundings& surroundings, const stroke::FormingZone& zone);

}  // namespace overbend::clearance
