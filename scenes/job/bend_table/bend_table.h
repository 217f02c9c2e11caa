// A bend table: one V bend for every pair of tools and every angle, each pressed to its free angle and read.
//
//   inside radius    of the arc over the middle 60 degrees, free (bent_strip.h)
//   bend deduction   both legs, measured outside, less the blank between the same places (legs.h): the leg of
//                    a bend of up to 90 degrees ends where the outer faces cross, of a sharper one at the
//                    outer tangent, as DIN 6935 has it
//   bend allowance   the blank between the tangent points of an arc of that inside radius: what the drawing's
//                    corner takes, 2 (r + s) tan(angle / 2) or 2 (r + s) from 90 degrees on, less the
//                    deduction
//   k-factor         where the neutral fibre would lie: allowance = angle (r + k s)
//   least flange     leg, measured outside, that stays on its shoulder to the end of the stroke
//                    (plan::flange_needed)
//   spread           of the free angle from coil to coil, see spread.h
// DIN 6935 of the same inside radius beside it.
//
// Units  mm, rad, N per mm of strip width (kN per metre).

#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "scenes/job/bend_table/table_tools.h"
#include "scenes/job/run/process.h"

namespace overbend::job {

struct BendTableOrder {
    material::Card material;
    double thickness = 1.0;
    std::optional<double> thickness_tolerance;  // either way; absent: usual
    std::optional<double> width;                // absent: wide, in plane strain
    double friction = 0.1;
    int layers = 11;
    std::vector<TableTools> tools;
    std::vector<double> angles;                      // free, > 0 and < pi
    std::function<void(int done, int of)> progress;  // from any thread, one at a time
};

struct BendTableRow {
    std::size_t tools = 0;  // of the order
    double angle = 0.0;
    bool made = false;
    std::string why;  // not made
    double loaded = 0.0, springback = 0.0;
    double inside_radius = 0.0;
    double allowance = 0.0, deduction = 0.0, k_factor = 0.0;
    double travel = 0.0, force = 0.0, least_flange = 0.0;
    double din_allowance = 0.0, din_deduction = 0.0;
    std::optional<AngleSpread> spread;  // not known: one of its runs was not solved
};

// Tools after tools, angles as ordered; on all cores, the same on any number of them.
// Throws OutOfRange: tools that do not fit one another or the strip, no angles, no tools.
std::vector<BendTableRow> bend_table(const BendTableOrder& order);

// The case of one row: a strip with one bend between the tools.
files::Case table_case(const BendTableOrder& order, const TableTools& tools, double angle);

}  // namespace overbend::job
