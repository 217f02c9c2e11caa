// The numbers of a job as JSON, format 2, see assets/manual/results.md. The same case gives the same bytes.

#pragma once

#include <string>

#include "scenes/files/case/case.h"
#include "scenes/job/run/process.h"
#include "scenes/job/shop/shop.h"

namespace overbend::documents {

std::string results_json(const files::Case& c, const job::JobResult& job, const job::ShopReport& shop);
std::string results_json(const files::Case& c, const job::JobResult& job);  // looks at the shop itself

}  // namespace overbend::documents
