// All ways of making the strokes of a case with the tools that fit, as a problem of order.
//
// Units  mm, rad, s.

#pragma once

#include <deque>
#include <map>
#include <string>
#include <vector>

#include "scenes/job/plan/stroke_geometry.h"
#include "sim/plan/bend_order.h"
#include "sim/plan/stroke_room.h"
#include "sim/tool/tool_set.h"

namespace overbend::job {

inline plan::BendSet bit(int b) {
    return plan::BendSet{1} << b;
}

// Thicknesses: shapes by rule are no better than that.
constexpr double usual_lies_deep = 0.1;

class Ways {
  public:
    // choices: bends that one stroke can make, with tools that can make them.
    // margin, lies_deep: see plan::RoomOptions.
    Ways(const files::Case& c, const Blank& blank, const std::vector<files::Step>& choices, double margin,
         double lies_deep = usual_lies_deep);

    // Valid as long as this is.
    plan::OrderProblem problem();

    // The step that a way stands for, its stop the drawing's angle.
    files::Step step(int way) const;

    bool is_possible(int way, plan::BendSet made) { return use(way, made).possible; }

    // Why the way cannot be used with these bends made, in words; empty when it can.
    std::string reason(int way, plan::BendSet made);

    // The same as figures.
    struct Blocked {
        double missing = 0.0;          // mm, that the strip beside the bend is too short for the die; > 0
        std::optional<plan::Hit> hit;  // else this
        std::optional<tool::Role> by;  // whose; absent: the strip itself, or a part of the press
    };
    std::optional<Blocked> blocked(int way, plan::BendSet made);
    // Where what is hit is in the stroke, seen from the punch; see plan::StrokeRoom::swept.
    std::vector<Eigen::Vector2d> swept(int way, plan::BendSet made, bool left) const;

    int count() const { return static_cast<int>(ways_.size()); }
    const plan::Way& way(int index) const { return ways_[index]; }

  private:
    struct Sides {
        plan::BendSet left = 0, right = 0;
    };
    void add(files::Step step, double margin, double lies_deep);
    std::vector<plan::Obstacle> obstacles_of(const files::Step& step);
    const clearance::Solid& solid_of(const tool::RigidTool& t, int face);
    Sides sides(int way, plan::BendSet made) const;
    plan::Use use(int way, plan::BendSet made);
    std::string flat_name(int way, const plan::Hit& hit) const;

    const files::Case& c_;
    Blank blank_;
    plan::FoldedPart part_;
    std::map<decltype(files::Step().set_up()), int> tool_numbers_;
    std::map<std::pair<std::string, int>, clearance::Solid> solids_;  // by name and face; stays where it is
    std::vector<plan::Way> ways_;
    std::vector<files::Step> steps_;
    std::deque<plan::StrokeRoom> rooms_;
};

}  // namespace overbend::job
