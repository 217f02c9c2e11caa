// A study as JSON: the keys are listed in assets/manual/results.md.

#pragma once

#include <nlohmann/json_fwd.hpp>

#include "scenes/documents/study/study_report.h"

namespace overbend::documents {

nlohmann::ordered_json study_json(const StudyReport& r);

}  // namespace overbend::documents
