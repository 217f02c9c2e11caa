#pragma once
#include <vector>
#include "sim/tool/arc_outline.h"
namespace overbend::clearance {
using tool::Vec2;
struct Convex { std::vector<Vec2> corners; };
struct Gap { double distance = 1e300; Vec2 on_strip = Vec2::Zero(), on_solid = Vec2::Zero(); };
class Solid {
  public:
    explicit Solid(const tool::ArcOutline& outline, double sag = 0.005);
    std::vector<Vec2> points; tool::Box box;
};
Gap gap(const Solid&, const Vec2& position, const Convex& piece, double within);
double apart(const Convex& a, const Convex& b);
}
