#include "sim/tool/punch.h"

#include <cmath>

#include "sim/errors.h"
#include "sim/tool/figures.h"
#include "sim/tool/offset_corners.h"
#include "sim/units.h"

namespace overbend::tool {

// ---- offset punch

ArcOutline make_outline(const OffsetPunch& punch) {
    require_above_zero("offset", punch.offset);
    require_above_zero("clearance", punch.clearance);
    require_above_zero("land", punch.land);
    require_above_zero("punch height", punch.height);
    const OffsetCorners corners{punch.offset,  punch.angle,       "nose radius", punch.nose_radius,
                                "root radius", punch.root_radius, punch.land};
    check_corners(corners);

    // Both corners lie on the line that is `clearance` off the die's sloped face when the lands are
    // `clearance` off the die's; that shifts them left by clearance tan(angle / 2).
    const double half_run = 0.5 * run(corners);
    const double shift = punch.clearance * std::tan(0.5 * punch.angle);
    const double low = -half_run - shift;
    const double high = half_run - shift;
    const double top = punch.offset + punch.height;
    return round_corners({{{low - punch.land, 0.0}, 0.0},
                          {{low, 0.0}, punch.nose_radius},
                          {{high, punch.offset}, punch.root_radius},
                          {{high + punch.land, punch.offset}, 0.0},
                          {{high + punch.land, top}, 0.0},
                          {{low - punch.land, top}, 0.0}});
}

// ---- channel punch

namespace {

// Half the width of the foot between its sharp lower corners: the rounded foot is `width` wide where it is
// widest, which is on the corner arcs.
double half_foot(const ChannelPunch& punch) {
    const double lean = (1.0 + std::sin(punch.side_relief)) / std::cos(punch.side_relief);
    return 0.5 * punch.width + punch.corner_radius * (lean - 1.0);
}

double half_top(const ChannelPunch& punch) {
    return half_foot(punch) - punch.foot_height * std::tan(punch.side_relief);
}

void check_foot(const ChannelPunch& punch) {
    require_above_zero("punch width", punch.width);
    require_not_negative("corner radius", punch.corner_radius);
    require_above_zero("foot height", punch.foot_height);
    if (punch.corner_radius > 0.5 * punch.width) {
        throw OutOfRange("corner radius", mm(punch.corner_radius) + " is more than half the foot's width",
                         "at most " + mm(0.5 * punch.width) + " fits");
    }
    if (!(punch.side_relief >= 0.0 && punch.side_relief < pi / 6.0)) {
        throw OutOfRange("side relief", deg(punch.side_relief) + " cannot be", "give 0 to less than 30 deg");
    }
    const double arc_end = punch.corner_radius * (1.0 + std::sin(punch.side_relief));
    if (punch.foot_height <= arc_end) {
        throw OutOfRange("foot height", mm(punch.foot_height) + " ends within the corners' arcs",
                         "give more than " + mm(arc_end));
    }
    if (half_top(punch) <= 0.0) {
        throw OutOfRange("side relief",
                         deg(punch.side_relief) + " brings the sides together below the foot's top",
                         "give less relief or a lower foot");
    }
}

void check_shank(const ChannelPunch& punch) {
    require_above_zero("shank width", punch.shank_width);
    require_above_zero("punch height", punch.height);
    const double widest = 2.0 * half_top(punch);
    if (punch.shank_width > widest * (1.0 + 1e-12)) {
        throw OutOfRange("shank width", mm(punch.shank_width) + " is wider than the top of the foot",
                         "at most " + mm(widest) + " fits");
    }
    if (punch.height <= punch.foot_height) {
        throw OutOfRange("punch height", mm(punch.height) + " leaves no shank above the foot",
                         "give more than the foot's height of " + mm(punch.foot_height));
    }
}

}  // namespace

ArcOutline make_outline(const ChannelPunch& punch) {
    check_foot(punch);
    check_shank(punch);
    const double foot = half_foot(punch);
    const double top = half_top(punch);
    double left = -0.5 * punch.shank_width;
    if (punch.shank == Shank::left) left = -top;
    if (punch.shank == Shank::right) left = top - punch.shank_width;
    const double right = left + punch.shank_width;

    std::vector<Corner> corners = {{{-foot, 0.0}, punch.corner_radius}, {{foot, 0.0}, punch.corner_radius}};
    corners.push_back({{top, punch.foot_height}, 0.0});
    // the foot's shoulders, where the shank leaves any
    constexpr double flush = 1e-6;  // mm
    if (right < top - flush) corners.push_back({{right, punch.foot_height}, 0.0});
    corners.push_back({{right < top - flush ? right : top, punch.height}, 0.0});
    corners.push_back({{left > -top + flush ? left : -top, punch.height}, 0.0});
    if (left > -top + flush) corners.push_back({{left, punch.foot_height}, 0.0});
    corners.push_back({{-top, punch.foot_height}, 0.0});
    return round_corners(corners);
}

}  // namespace overbend::tool
