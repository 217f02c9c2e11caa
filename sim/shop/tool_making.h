// Cost of making a tool: the block of steel it is cut from, the time on the mill and on the wire.
//
// The block is squared by milling, then the profile is cut by wire erosion along everything that does not lie
// on the block's sides.
//
// Units  mm, kg, h; kg/m3.

#pragma once

#include "sim/tool/arc_outline.h"

namespace overbend::shop {

// Common practice, no source; the case may give its own.
struct MakingRates {
    double allowance = 2.5;    // mm on every side of the block, milled off, >= 0
    double milling = 15.0;     // cm3 a minute, > 0
    double erosion = 100.0;    // mm2 a minute of wire: length of cut times height, > 0
    double fitting = 1.0;      // h a tool: setting up its machines, fitting, trial, >= 0
    double design = 2.0;       // h a tool, >= 0
    double programming = 1.0;  // h a tool: programs of its machines (CAM), >= 0
    double grinding = 1.5;     // h of a hardened tool: its faces after heat treatment, >= 0
};

struct ToolStock {
    double mass = 0.0;                                            // of the finished tool
    double block_wide = 0.0, block_high = 0.0, block_long = 0.0;  // mm, whole ones
    double block_mass = 0.0;
    double milled = 0.0;  // cm3
    double eroded = 0.0;  // mm2
    double milling_hours = 0.0, erosion_hours = 0.0;
};

// length  mm, along the bend line, > 0; density kg/m3, > 0
ToolStock stock_of(const tool::ArcOutline& outline, double length, double density, const MakingRates& rates);

}  // namespace overbend::shop
