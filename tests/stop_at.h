// Stops of strokes for checks, in a line.

#pragma once

#include "sim/stroke/stroke_scene.h"

namespace overbend::tests {

// value  mm, N per mm, or rad
inline stroke::Stop stop_at(stroke::StopKind kind, double value) {
    stroke::Stop stop;
    stop.kind = kind;
    stop.value = value;
    return stop;
}

}  // namespace overbend::tests
