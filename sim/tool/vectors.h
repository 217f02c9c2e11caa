// Two products of plane vectors that the outlines' geometry needs.

#pragma once

#include "sim/tool/arc_outline.h"

namespace overbend::tool {

inline double cross(const Vec2& a, const Vec2& b) {
    return a.x() * b.y() - a.y() * b.x();
}
inline Vec2 left_of(const Vec2& v) {
    return Vec2(-v.y(), v.x());
}

}  // namespace overbend::tool
