// The colours of the pictures as variables of a style sheet, light and dark, so that a page and what its
// script draws look like the pictures.

#pragma once

#include <string>
#include <vector>

namespace overbend::report {

// :root { --ink: ... } for the reader's scheme, and the light one on paper.
std::string colour_variables();

// The colours of the steps from -steps to steps.
std::vector<std::string> step_colours(int steps);

}  // namespace overbend::report
