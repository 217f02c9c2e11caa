// The numbers of a job as JSON, format 1: documented in the README. The same case gives the same bytes.

#pragma once

#include <string>

#include "scenes/case/case.h"
#include "scenes/process/process.h"
#include "scenes/shop/shop.h"

namespace overbend::scenes {

std::string results_json(const Case& c, const JobResult& job, const ShopReport& shop);
std::string results_json(const Case& c, const JobResult& job);  // looks at the shop itself

}  // namespace overbend::scenes
