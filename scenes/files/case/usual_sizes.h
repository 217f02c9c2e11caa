// What holds where a case file leaves a size of a tool out. Its reader and its writer share these.
//
// Units  mm, rad. All: common practice, no source.

#pragma once

#include <algorithm>
#include <cmath>

#include "sim/tool/die.h"
#include "sim/tool/punch.h"

namespace overbend::files {

constexpr double usual_punch_height = 60.0;
inline double usual_shank_width(double nose_radius) {
    return std::max(12.0, 2.0 * nose_radius + 2.0);
}
// Of a die's block, with top face beside the shoulders.
inline double usual_die_width(double opening, double shoulder_radius) {
    return opening + 4.0 * shoulder_radius + 16.0;
}
// groove_depths  of all its grooves together
inline double usual_die_height(double groove_depths) {
    return 1.5 * groove_depths + 25.0;
}

}  // namespace overbend::files

// By the tool that they are left out of.
namespace overbend::files::usual {

inline double shank_width(const tool::VeePunch& punch) {
    return usual_shank_width(punch.nose_radius);
}

constexpr double shoulder_radius = 1.0;  // of a V groove
constexpr double bottom_radius = 0.4;    // of a V groove
inline double width(const tool::VeeDie& die) {
    double widest = 0.0;
    for (const tool::VeeFace& face : die.faces)
        widest = std::max(widest, usual_die_width(face.die_opening, face.shoulder_radius));
    return widest;
}
inline double height(const tool::VeeDie& die) {
    double depths = 0.0;
    for (const tool::VeeFace& face : die.faces) depths += tool::groove_depth(face);
    return usual_die_height(depths);
}
inline double depth(const tool::OpenDie& die) {
    return 2.0 * die.die_opening;
}

constexpr double root_radius = 0.5;  // of either tool of an offset
constexpr double land = 15.0;
constexpr double offset_punch_height = 50.0;
constexpr double offset_die_height = 40.0;

// As wide as the foot, which its relief makes narrower at the top.
inline double shank_width(const tool::ChannelPunch& punch) {
    return punch.width - 2.0 * punch.foot_height * std::tan(punch.side_relief);
}
constexpr double channel_punch_height = 60.0;
inline double width(const tool::ChannelDie& die) {
    return std::max(die.die_opening + 30.0, usual_die_width(die.die_opening, die.shoulder_radius));
}
inline double height(const tool::ChannelDie& die) {
    return die.depth + 20.0;
}

constexpr double flat_height = 40.0;
constexpr double wiping_height = 60.0;
constexpr double pad_height = 15.0;  // and a clamp's

}  // namespace overbend::files::usual
