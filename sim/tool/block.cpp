#include "sim/tool/block.h"

#include <algorithm>

#include "sim/errors.h"
#include "sim/tool/figures.h"

namespace overbend::tool {

namespace {

void check(const Block& b) {
    require_above_zero("block width", b.width);
    require_above_zero("block height", b.height);
    require_not_negative("corner radius", b.left_radius);
    require_not_negative("corner radius", b.right_radius);
    if (b.left_radius + b.right_radius > b.width)
        throw OutOfRange("corner radius",
                         mm(b.left_radius) + " and " + mm(b.right_radius) + " do not fit side by side",
                         "together at most the width, " + mm(b.width));
    const double larger = std::max(b.left_radius, b.right_radius);
    if (b.height <= larger)
        throw OutOfRange("block height", mm(b.height) + " ends within the corner of " + mm(larger),
                         "give more than that");
}

// The working face at y = 0, the back at y = back.
ArcOutline outline(const Block& b, double back) {
    check(b);
    const double half = 0.5 * b.width;
    return round_corners({{{-half, 0.0}, b.left_radius},
                          {{half, 0.0}, b.right_radius},
                          {{half, back}, 0.0},
                          {{-half, back}, 0.0}});
}

}  // namespace

ArcOutline block_facing_up(const Block& b) {
    return outline(b, -b.height);
}

ArcOutline block_facing_down(const Block& b) {
    return outline(b, b.height);
}

}  // namespace overbend::tool
