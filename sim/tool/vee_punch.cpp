// V punches, straight and relieved; declared in punch.h.

#include <algorithm>
#include <cmath>

#include "sim/errors.h"
#include "sim/tool/figures.h"
#include "sim/tool/punch.h"

namespace overbend::tool {

namespace {

constexpr double one_corner = 1e-9;  // mm; corners nearer to each other than this are one

// The wedge between its flanks, which meet below the nose when they are run on to the axis.
struct Wedge {
    double half_angle = 0.0;
    double tip = 0.0;  // y where they meet
    double half_width_at(double y) const { return (y - tip) * std::tan(half_angle); }
    double height_at(double half_width) const { return tip + half_width / std::tan(half_angle); }
};

Wedge wedge_of(const VeePunch& punch) {
    const double half_angle = 0.5 * punch.angle;
    return {half_angle, -punch.nose_radius * (1.0 / std::sin(half_angle) - 1.0)};
}

void check_straight(const VeePunch& punch) {
    require_above_zero("nose radius", punch.nose_radius);
    require_above_zero("punch height", punch.height);
    require_above_zero("shank width", punch.shank_width);
    require_between_flat_and_doubled("punch angle", punch.angle);
    const double half_width = 0.5 * punch.shank_width;
    if (punch.nose_radius > half_width) {
        throw OutOfRange(
            "nose radius",
            mm(punch.nose_radius) + " does not fit under a shank " + mm(punch.shank_width) + " wide",
            "at most " + mm(half_width) + " fits");
    }
    const double wedge = wedge_of(punch).height_at(half_width);
    if (punch.height <= wedge) {
        throw OutOfRange("punch height",
                         mm(punch.height) + " ends within the wedge, which ends at a shank " +
                             mm(punch.shank_width) + " wide at a height of " + mm(wedge),
                         "give more than that, or a narrower shank");
    }
}

// ---- relief, worked out for the right side

// Where the corners of a relief lie. x is counted away from the relieved side where it says "back".
struct Corners {
    double edge = 0.0;   // x of the punch's side where the relief begins
    double face = 0.0;   // x of the plane face
    double low = 0.0;    // y where the plane face begins
    double high = 0.0;   // and ends
    double back = 0.0;   // distance of the neck's other side from the axis
    double swell = 0.0;  // by which that stands out from the shank
};

Corners corners_of(const VeePunch& punch, const Relief& relief) {
    const double half_width = 0.5 * punch.shank_width;
    Corners c;
    c.edge = std::min(half_width, wedge_of(punch).half_width_at(relief.from));
    c.face = -relief.set_back;
    c.low = relief.from + (c.edge - c.face);
    c.high = relief.to - (half_width - c.face);
    c.back = std::max(half_width, relief.set_back + relief.neck);
    c.swell = c.back - half_width;
    return c;
}

void check_begin_and_end(const VeePunch& punch, const Relief& relief) {
    const double arc_end = punch.nose_radius * (1.0 - std::sin(0.5 * punch.angle));
    if (!(relief.from > arc_end)) {
        throw OutOfRange("relief", "it begins at " + mm(relief.from) + ", within the nose's arc",
                         "begin it above " + mm(arc_end));
    }
    const double wedge = wedge_of(punch).height_at(0.5 * punch.shank_width);
    if (!(relief.to > wedge)) {
        throw OutOfRange("relief", "it ends at " + mm(relief.to) + ", within the wedge",
                         "end it above " + mm(wedge) + ", where the wedge ends at the shank");
    }
    if (!(relief.to < punch.height)) {
        throw OutOfRange("relief", "it ends at " + mm(relief.to) + " and leaves no shank above it",
                         "end it below the punch's height of " + mm(punch.height));
    }
}

void check_face(const Relief& relief, const Corners& c) {
    if (!(c.face < c.edge)) {
        throw OutOfRange("relief", "a face set back by " + mm(relief.set_back) + " does not cut the punch",
                         "set it back by more than " + mm(-c.edge));
    }
    if (!(c.high > c.low)) {
        throw OutOfRange(
            "relief",
            "between " + mm(relief.from) + " and " + mm(relief.to) + " its faces at 45 degrees do not fit",
            "end it above " + mm(relief.to + c.low - c.high) + ", or set it back less");
    }
}

// What the flank on the other side leaves of the wedge where the plane face begins.
double thickness_below(const VeePunch& punch, const Corners& c) {
    const Wedge wedge = wedge_of(punch);
    return (c.face + wedge.half_width_at(c.low)) * std::cos(wedge.half_angle);
}

void check_neck(const VeePunch& punch, const Relief& relief, const Corners& c) {
    require_above_zero("neck", relief.neck);
    require_not_negative("root radius", relief.root_radius);
    const double below = thickness_below(punch, c);
    if (!(below > 0.0)) {
        throw OutOfRange("relief", "set back by " + mm(relief.set_back) + " it cuts through the wedge",
                         "set it back less, or begin it higher");
    }
    if (relief.neck > below) {
        throw OutOfRange(
            "neck", mm(relief.neck) + " is more than remains of the wedge at the deepest point of the relief",
            "at most " + mm(below) + " remains there; begin the relief higher or set it back less");
    }
    const double full = wedge_of(punch).height_at(c.back);
    if (!(full < relief.to - c.swell)) {
        throw OutOfRange("neck", mm(relief.neck) + " is so thick that the wedge ends above the relief",
                         "give less, or end the relief above " + mm(full + c.swell));
    }
}

ArcOutline relieved_on_the_right(const VeePunch& punch, const Relief& relief) {
    for (const double value : {relief.from, relief.to, relief.set_back}) {
        if (!std::isfinite(value))
            throw OutOfRange("relief", "a figure is not a number", "use finite numbers");
    }
    check_begin_and_end(punch, relief);
    const Corners c = corners_of(punch, relief);
    check_face(relief, c);
    check_neck(punch, relief, c);

    const Wedge wedge = wedge_of(punch);
    const double half_width = 0.5 * punch.shank_width;
    std::vector<Corner> corners = {{{0.0, wedge.tip}, punch.nose_radius}};
    // a relief that begins above the wedge leaves some of the shank under it
    if (const double out = wedge.height_at(half_width); out < relief.from - one_corner)
        corners.push_back({{half_width, out}, 0.0});
    corners.push_back({{c.edge, relief.from}, 0.0});
    corners.push_back({{c.face, c.low}, relief.root_radius});
    corners.push_back({{c.face, c.high}, relief.root_radius});
    corners.push_back({{half_width, relief.to}, 0.0});
    corners.push_back({{half_width, punch.height}, 0.0});
    corners.push_back({{-half_width, punch.height}, 0.0});
    if (c.swell > one_corner) {
        corners.push_back({{-half_width, relief.to}, 0.0});
        corners.push_back({{-c.back, relief.to - c.swell}, 0.0});
    }
    corners.push_back({{-c.back, wedge.height_at(c.back)}, 0.0});
    return round_corners(corners);
}

}  // namespace

ArcOutline make_outline(const VeePunch& punch) {
    check_straight(punch);
    if (punch.relief) {
        const ArcOutline right = relieved_on_the_right(punch, *punch.relief);
        return punch.relief->side == Side::right ? right : mirrored(right);
    }
    const Wedge wedge = wedge_of(punch);
    const double half_width = 0.5 * punch.shank_width;
    const double out = wedge.height_at(half_width);
    return round_corners({{{0.0, wedge.tip}, punch.nose_radius},
                          {{half_width, out}, 0.0},
                          {{half_width, punch.height}, 0.0},
                          {{-half_width, punch.height}, 0.0},
                          {{-half_width, out}, 0.0}});
}

}  // namespace overbend::tool
