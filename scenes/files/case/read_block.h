// Reads the block tools of a case file, and the springs behind pads and clamps. For read_tool alone.

#pragma once

#include "scenes/files/case/case.h"

namespace overbend::files {

class StrictTable;

using Shape = decltype(Tool::shape);

Shape read_flat_punch(const StrictTable& table);
Shape read_flat_die(const StrictTable& table);
Shape read_wiping_punch(const StrictTable& table);
Shape read_wiping_die(const StrictTable& table);

// strip_width: mm, on which the spring presses.
Shape read_pad(const StrictTable& table, double strip_width);
Shape read_clamp(const StrictTable& table, double strip_width);

}  // namespace overbend::files
