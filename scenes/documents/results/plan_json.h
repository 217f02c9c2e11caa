// A plan as JSON: the orders, what was turned down, how well the drawing is met.

#pragma once

#include <string>

#include "scenes/planning/plan.h"

namespace overbend::scenes {

std::string plan_json(const Case& c, const PlanResult& plan);

}  // namespace overbend::scenes
