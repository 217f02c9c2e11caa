// Whether a half-formed strip has room in a stroke: each group of each side, for each set of made bends,
// against everything that stands in the press, through the whole stroke. What was found is kept, since the
// same group in the same shape comes again with other bends made beyond it.
//
// The groups next to the bend are pressed by the tools over `reach` and are looked at beyond it. A strip may
// lie on a die, pad or clamp: there only an overlap counts. Between two instants nothing is passed over: the
// next one is no further than the distance divided by how fast the two can come together (J. Mirtich,
// Impulse-based dynamic simulation, thesis, Berkeley 1996, "conservative advancement").
//
// Units  mm, rad.

#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "sim/clearance/solid.h"
#include "sim/plan/stroke_path.h"
#include "sim/tool/tool_set.h"

namespace overbend::plan {

struct Obstacle {
    const clearance::Solid* solid = nullptr;           // must outlive the room
    Eigen::Vector2d stands = Eigen::Vector2d::Zero();  // with the punch's origin at height 0
    bool with_ram = false;
    bool lies_on = false;  // the strip may lie on it
    std::string words;     // "punch 'wedge'"
    tool::Role role = tool::Role::die;
};

struct RoomOptions {
    double margin = 0.2;     // mm, minimum clearance to everything that the strip does not lie on
    double lies_deep = 0.1;  // thicknesses that it may be in what it lies on: less is no overlap
    double raised = 100.0;   // mm, from touch to where the ram stands open
    double gauge_low = 0.0, gauge_high = 0.0;  // heights between which the gauge touches the strip
};

// Why a stroke is not possible.
struct Hit {
    bool left = false;  // which side, as it lies
    int group = 0;
    int obstacle = -1;   // -1: the strip itself, or too short a flat
    double depth = 0.0;  // mm, deepest in the stroke; < 0: so much is missing to the margin
    double s = 0.0;      // when
    Eigen::Vector2d at = Eigen::Vector2d::Zero();
};

class StrokeRoom {
  public:
    // reach: blank from the bend's end outwards that the tools press, on either side.
    StrokeRoom(const StrokePath& path, Side left, Side right, std::vector<Obstacle> obstacles,
               double reach_left, double reach_right, const RoomOptions& options);

    // made_left, made_right: bits of the sides.
    bool has_room(BendSet made_left, BendSet made_right);
    bool is_supported(BendSet made_left, BendSet made_right) const;
    // How often the strip has to be slid along the bend line, in and off: 0 to 2. Only where there is room.
    int slides(BendSet made_left, BendSet made_right);
    // Where the gauge stands: furthest right of the axis within its heights.
    double gauge(BendSet made_right);

    // The worst obstacle, searched more finely; nothing when there is room.
    std::optional<Hit> worst_hit(BendSet made_left, BendSet made_right) const;
    // How much too short the straight next to the bend is, left and right; <= 0 when it does.
    double missing_left(BendSet made_left) const;
    double missing_right(BendSet made_right) const;

    // Where the outlines of a side's groups beyond its first are in the stroke, seen from the punch: points a
    // thickness apart.
    // left: which side; made: its bits.
    std::vector<Eigen::Vector2d> swept(bool left, BendSet made) const;

    const StrokePath& path() const { return path_; }
    const std::vector<Obstacle>& obstacles() const { return obstacles_; }

  private:
    enum Mark : std::uint8_t { known = 1, blocked = 2, no_way_in = 4, no_way_out = 8 };
    struct Half {
        Side side;
        bool mirror = false;
        double reach = 0.0;
        std::vector<std::vector<std::uint8_t>> marks;  // by group, by the bits before it
    };
    std::uint8_t mark_of(Half& half, int group, BendSet made);
    std::uint8_t look(const Half& half, int group, BendSet made) const;
    bool goes_through(const Half& half, const std::vector<clearance::Convex>& pieces) const;
    bool is_under_punch(const Half& half, const std::vector<clearance::Convex>& pieces, double s) const;
    bool halves_meet(BendSet made_left, BendSet made_right);
    bool groups_meet(int left, BendSet made_left, int right, BendSet made_right) const;
    double reach_at_gauge(int group, BendSet made) const;
    Eigen::Vector2d placed(const Half& half, const Eigen::Vector2d& own, const PathPoint& point) const;
    clearance::Convex placed(const Half& half, const clearance::Convex& piece, const PathPoint& point) const;

    StrokePath path_;
    PathSpeed speed_;
    std::vector<PathPoint> instants_;  // from placed to the stop
    double needed_ = 0.0;
    Half left_, right_;
    std::vector<Obstacle> obstacles_;
    RoomOptions options_;
    std::vector<std::vector<double>> gauge_reach_;     // by group, by the bits before it
    std::vector<std::vector<std::uint8_t>> meetings_;  // by pair of groups, by both sets of bits
};

}  // namespace overbend::plan
