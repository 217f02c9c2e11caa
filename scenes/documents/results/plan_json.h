// A plan as JSON: the orders, what was turned down, how well the drawing is met.

#pragma once

#include <string>

#include "scenes/job/plan/plan.h"

namespace overbend::documents {

std::string plan_json(const files::Case& c, const job::PlanResult& plan);

}  // namespace overbend::documents
