#include "sim/tool/die.h"

#include <cmath>

#include "sim/errors.h"
#include "sim/tool/figures.h"
#include "sim/tool/offset_corners.h"
#include "sim/units.h"

namespace overbend::tool {

namespace {

constexpr double web_share = 0.25;  // of a two-way block's height, left between its grooves; common practice,
                                    // no source

void check_block_width(double width, double die_opening, double shoulder_radius) {
    require_above_zero("die width", width);
    const double least = die_opening + 2.0 * shoulder_radius;
    if (width > least) return;
    throw OutOfRange("die width", mm(width) + " leaves no top face beside the shoulders",
                     "give more than " + mm(least));
}

}  // namespace

// ---- V die

namespace {

void check_face(const VeeFace& face) {
    require_between_flat_and_doubled("die angle", face.angle);
    require_above_zero("die opening", face.die_opening);
    require_above_zero("shoulder radius", face.shoulder_radius);
    require_not_negative("bottom radius", face.bottom_radius);
    // both arcs take radius cos(angle / 2) of half the opening
    const double both_fit = 0.5 * face.die_opening / std::cos(0.5 * face.angle);
    if (face.shoulder_radius >= both_fit) {
        throw OutOfRange("shoulder radius",
                         mm(face.shoulder_radius) + " makes the shoulders overlap in an opening of " +
                             mm(face.die_opening) + " at " + deg(face.angle),
                         "give less than " + mm(both_fit));
    }
    if (face.shoulder_radius + face.bottom_radius > both_fit) {
        throw OutOfRange("bottom radius",
                         mm(face.bottom_radius) + " does not fit between the flanks below shoulders of " +
                             mm(face.shoulder_radius),
                         "at most " + mm(both_fit - face.shoulder_radius) + " fits");
    }
}

// Half the groove's width at the top face between its sharp corners; the arcs meet the top face further out.
double half_sharp_opening(const VeeFace& face) {
    const double turn = 0.5 * (pi - face.angle);
    return 0.5 * face.die_opening - face.shoulder_radius * std::tan(0.5 * turn);
}

// From the top face to where the flanks, run on, meet.
double sharp_depth(const VeeFace& face) {
    return half_sharp_opening(face) / std::tan(0.5 * face.angle);
}

void check_block(const VeeDie& die) {
    if (die.faces.empty() || die.faces.size() > 2) {
        throw OutOfRange("die faces", std::to_string(die.faces.size()) + " cannot be", "give one or two");
    }
    require_above_zero("die height", die.height);
    double depths = 0.0;
    for (const VeeFace& face : die.faces) {
        depths += groove_depth(face);
        check_block_width(die.width, face.die_opening, face.shoulder_radius);
    }
    if (die.faces.size() == 1 && depths >= die.height) {
        throw OutOfRange("die height",
                         mm(die.height) + " is less than the groove, which is " + mm(depths) + " deep",
                         "give more than " + mm(depths));
    }
    if (die.faces.size() == 2 && depths > die.height * (1.0 - web_share)) {
        throw OutOfRange("die height",
                         mm(die.height) +
                             " leaves less than a quarter of it between the grooves, which are " +
                             mm(depths) + " deep together",
                         "give at least " + mm(depths / (1.0 - web_share)));
    }
}

}  // namespace

double corner_to_centre(double shoulder_radius, double angle) {
    return shoulder_radius * std::tan(0.25 * (pi - angle));
}

double groove_depth(const VeeFace& face) {
    check_face(face);
    return sharp_depth(face) - face.bottom_radius * (1.0 / std::sin(0.5 * face.angle) - 1.0);
}

ArcOutline make_outline(const VeeDie& die, int face) {
    check_block(die);
    const int count = static_cast<int>(die.faces.size());
    if (face < 1 || face > count) {
        throw OutOfRange("die face", std::to_string(face) + " is not there",
                         count == 1 ? "this die has only face 1" : "give 1 or 2");
    }
    const double side = 0.5 * die.width;
    const VeeFace& up = die.faces[face - 1];
    const double x = half_sharp_opening(up);
    std::vector<Corner> corners = {{{side, 0.0}, 0.0},
                                   {{x, 0.0}, up.shoulder_radius},
                                   {{0.0, -sharp_depth(up)}, up.bottom_radius},
                                   {{-x, 0.0}, up.shoulder_radius},
                                   {{-side, 0.0}, 0.0},
                                   {{-side, -die.height}, 0.0}};
    if (count == 2) {
        const VeeFace& down = die.faces[2 - face];
        const double below = half_sharp_opening(down);
        corners.push_back({{-below, -die.height}, down.shoulder_radius});
        corners.push_back({{0.0, -die.height + sharp_depth(down)}, down.bottom_radius});
        corners.push_back({{below, -die.height}, down.shoulder_radius});
    }
    corners.push_back({{side, -die.height}, 0.0});
    return round_corners(corners);
}

// ---- open die

ArcOutline make_outline(const OpenDie& die) {
    require_above_zero("die opening", die.die_opening);
    require_above_zero("shoulder radius", die.shoulder_radius);
    require_above_zero("slot depth", die.depth);
    if (2.0 * die.shoulder_radius >= die.die_opening) {
        throw OutOfRange("shoulder radius",
                         mm(die.shoulder_radius) + " leaves no slot in an opening of " + mm(die.die_opening),
                         "give less than " + mm(0.5 * die.die_opening));
    }
    if (die.depth <= die.shoulder_radius) {
        throw OutOfRange("slot depth", mm(die.depth) + " ends within the shoulders' arcs",
                         "give more than " + mm(die.shoulder_radius));
    }
    check_block_width(die.width, die.die_opening, die.shoulder_radius);

    const double side = 0.5 * die.width;
    const double wall = 0.5 * die.die_opening - die.shoulder_radius;
    const double bottom = -1.25 * die.depth;
    return round_corners({{{side, 0.0}, 0.0},
                          {{wall, 0.0}, die.shoulder_radius},
                          {{wall, -die.depth}, 0.0},
                          {{-wall, -die.depth}, 0.0},
                          {{-wall, 0.0}, die.shoulder_radius},
                          {{-side, 0.0}, 0.0},
                          {{-side, bottom}, 0.0},
                          {{side, bottom}, 0.0}});
}

// ---- offset die

ArcOutline make_outline(const OffsetDie& die) {
    require_above_zero("offset", die.offset);
    require_above_zero("land", die.land);
    require_above_zero("die height", die.height);
    const OffsetCorners corners{die.offset,    die.angle,       "shoulder radius", die.shoulder_radius,
                                "root radius", die.root_radius, die.land};
    check_corners(corners);
    const double half_run = 0.5 * run(corners);
    const double left = -half_run - die.land;
    const double right = half_run + die.land;
    const double bottom = -die.offset - die.height;
    return round_corners({{{left, bottom}, 0.0},
                          {{right, bottom}, 0.0},
                          {{right, 0.0}, 0.0},
                          {{half_run, 0.0}, die.shoulder_radius},
                          {{-half_run, -die.offset}, die.root_radius},
                          {{left, -die.offset}, 0.0}});
}

// ---- channel die

namespace {

void check_channel(const ChannelDie& die) {
    require_above_zero("die opening", die.die_opening);
    require_above_zero("shoulder radius", die.shoulder_radius);
    require_above_zero("channel depth", die.depth);
    require_not_negative("floor crown", die.floor_crown);
    require_above_zero("die height", die.height);
    if (die.depth <= die.shoulder_radius) {
        throw OutOfRange("channel depth", mm(die.depth) + " ends within the shoulders' arcs",
                         "give more than " + mm(die.shoulder_radius));
    }
    const double room = die.depth - die.shoulder_radius;
    const double half_opening = 0.5 * die.die_opening;
    if (die.floor_crown >= room || die.floor_crown > half_opening) {
        throw OutOfRange("floor crown", mm(die.floor_crown) + " is too high for the channel",
                         room > half_opening ? "give at most half the opening, " + mm(half_opening)
                                             : "give less than the walls are high, " + mm(room));
    }
    check_block_width(die.width, die.die_opening, die.shoulder_radius);
    if (die.height <= die.depth) {
        throw OutOfRange("die height",
                         mm(die.height) + " is less than the channel, which is " + mm(die.depth) + " deep",
                         "give more than " + mm(die.depth));
    }
}

}  // namespace

ArcOutline make_outline(const ChannelDie& die) {
    check_channel(die);
    const double side = 0.5 * die.width;
    const double wall = 0.5 * die.die_opening;
    // the crown is the height of the floor's arc over its chord, the opening
    const double bulge = die.floor_crown / wall;
    return from_points({{{side, 0.0}, 0.0, 0.0},
                        {{wall, 0.0}, die.shoulder_radius, 0.0},
                        {{wall, -die.depth}, 0.0, bulge},
                        {{-wall, -die.depth}, 0.0, 0.0},
                        {{-wall, 0.0}, die.shoulder_radius, 0.0},
                        {{-side, 0.0}, 0.0, 0.0},
                        {{-side, -die.height}, 0.0, 0.0},
                        {{side, -die.height}, 0.0, 0.0}});
}

}  // namespace overbend::tool
