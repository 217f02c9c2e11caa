// What is measured on a finished part, as a list of JSON: each size with drawing, finished, off and allowed.

#pragma once

#include <nlohmann/json_fwd.hpp>

#include "scenes/files/case/case.h"
#include "scenes/job/run/process.h"

namespace overbend::documents {

nlohmann::ordered_json measures_json(const files::Case& c, const job::JobResult& job);

}  // namespace overbend::documents
