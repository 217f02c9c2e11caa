// A picture against one that somebody has looked at and found good, compared by how different they look
// (perceptual.h). Renewed, after a look at each, by OVERBEND_RENEW_PICTURES=1.

#pragma once

#include <string>

#include "render/picture/painter.h"

namespace overbend::tests {

// A CHECK of doctest's. file: the good one, PNG. What is unlike it is left in the folder for temporary files,
// which is told.
void check_against_golden(const std::string& file, const picture::Pixels& found);

}  // namespace overbend::tests
