#include "tests/files/random_tool.h"

#include <cmath>

#include "scenes/files/case/tool_outline.h"
#include "sim/errors.h"
#include "sim/units.h"

namespace overbend::tests {

namespace {

using files::Tool;

double between(double low, double high, std::mt19937& random) {
    return low + (high - low) * std::uniform_real_distribution<double>(0.0, 1.0)(random);
}

tool::VeeFace random_face(std::mt19937& r) {
    return {between(0.3, 2.8, r), between(2.0, 40.0, r), between(0.2, 4.0, r), between(0.0, 2.0, r)};
}

tool::Block random_block(std::mt19937& r) {
    return {between(5.0, 60.0, r), between(0.0, 2.0, r), between(0.0, 2.0, r), between(5.0, 60.0, r)};
}

// A star of corners, some rounded or joined by arcs.
files::OutlineTool random_outline(std::mt19937& r) {
    const int count = 3 + static_cast<int>(r() % 6);
    std::vector<tool::PathPoint> points;
    const double size = between(4.0, 60.0, r);
    bool bulged = false;
    for (int i = 0; i < count; ++i) {
        const double angle = 2.0 * pi * (i + between(0.1, 0.9, r)) / count;
        tool::PathPoint point;
        point.at = size * between(0.6, 1.0, r) * tool::Vec2(std::cos(angle), std::sin(angle));
        const bool bulge = r() % 3 == 0;
        if (bulge) point.bulge = between(-0.2, 0.5, r);
        if (!bulge && !bulged && i > 0 && i + 1 < count) point.radius = between(0.0, 0.05, r) * size;
        bulged = bulge;
        points.push_back(point);
    }
    return {tool::from_points(points), points};
}

decltype(Tool::shape) random_shape(int kind, std::mt19937& r) {
    switch (kind) {
        case 0: {
            tool::VeePunch p{between(0.4, 2.5, r), between(0.2, 5.0, r), between(30.0, 120.0, r),
                             between(4.0, 30.0, r)};
            if (r() % 3 == 0)
                p.relief = tool::Relief{r() % 2 == 0 ? tool::Side::left : tool::Side::right,
                                        between(5.0, 15.0, r),
                                        between(25.0, 60.0, r),
                                        between(-2.0, 4.0, r),
                                        between(1.0, 4.0, r),
                                        between(0.0, 2.0, r)};
            return p;
        }
        case 1: {
            tool::VeeDie d{{random_face(r)}, between(20.0, 80.0, r), between(20.0, 100.0, r)};
            if (r() % 2 == 0) d.faces.push_back(random_face(r));
            return d;
        }
        case 2:
            return tool::OpenDie{between(3.0, 40.0, r), between(0.2, 4.0, r), between(5.0, 60.0, r),
                                 between(20.0, 80.0, r)};
        case 3:
            return tool::OffsetPunch{between(1.0, 15.0, r), between(0.4, 1.57, r), between(0.0, 2.0, r),
                                     between(0.0, 2.0, r),  between(0.3, 3.0, r),  between(5.0, 30.0, r),
                                     between(10.0, 60.0, r)};
        case 4:
            return tool::OffsetDie{between(1.0, 15.0, r), between(0.4, 1.57, r), between(0.0, 2.0, r),
                                   between(0.0, 2.0, r),  between(5.0, 30.0, r), between(10.0, 60.0, r)};
        case 5: {
            tool::ChannelPunch p;
            p.width = between(8.0, 60.0, r);
            p.corner_radius = between(0.0, 3.0, r);
            p.side_relief = r() % 2 == 0 ? 0.0 : between(0.0, 0.2, r);
            p.foot_height = between(5.0, 40.0, r);
            p.shank_width = between(3.0, 30.0, r);
            p.shank = static_cast<tool::Shank>(r() % 3);
            p.height = between(30.0, 90.0, r);
            return p;
        }
        case 6:
            return tool::ChannelDie{between(6.0, 50.0, r),   between(0.3, 4.0, r),
                                    between(3.0, 30.0, r),   r() % 2 == 0 ? 0.0 : between(0.0, 2.0, r),
                                    between(20.0, 100.0, r), between(15.0, 70.0, r)};
        case 7:
            return files::FlatPunch{random_block(r)};
        case 8:
            return files::FlatDie{random_block(r)};
        case 9:
            return files::WipingPunch{random_block(r), between(0.5, 3.0, r)};
        case 10:
            return files::WipingDie{random_block(r)};
        case 11:
            return files::Pad{random_block(r), {}};
        case 12:
            return files::Clamp{random_block(r), std::nullopt};
        case 14:
            return tool::RadiusPunch{between(4.0, 40.0, r), between(4.0, 60.0, r), between(20.0, 90.0, r)};
        case 15:
            return tool::RadiusDie{between(3.0, 40.0, r), between(3.0, 60.0, r), between(0.3, 4.0, r),
                                   between(10.0, 90.0, r), between(10.0, 70.0, r)};
        default:
            return random_outline(r);
    }
}

}  // namespace

Tool random_tool(int kind, std::mt19937& random) {
    for (;;) {
        try {
            Tool tool{"random", random_shape(kind, random)};
            files::tool_outline(tool, 1);
            return tool;
        } catch (const OutOfRange&) {  // another one, then
        }
    }
}

}  // namespace overbend::tests
