// What the tools of a job cost: making or buying each, and their wear.
//
// A tool that is made is designed, its machines are programmed, it is cut from a block (see tool_making.h),
// hardened, ground and fitted. It wears: after so many strokes it is reground, and after so many regrinds
// replaced. The first of its kind is paid with the batches that share it; wear pays for what follows.

#pragma once

#include <string>
#include <vector>

#include "sim/shop/cost.h"

namespace overbend::shop {

// A figure that is no cost at all.
Traced nothing(const std::string& money);

// One a tool, in their order. The least charge for heat treatment is that of all hardened tools together,
// shared by their mass.
std::vector<ToolCost> tool_costs(const CostRates& rates, const std::vector<ToolFigures>& tools);

// each: of tool_costs
CostLine tools_line(const CostRates& rates, const std::vector<ToolCost>& each);
CostLine wear_line(const CostRates& rates, const JobFigures& job, const std::vector<ToolCost>& each);

}  // namespace overbend::shop
