// A study's charts as files: a histogram of each angle and of what is off most, what the scatter of each
// angle comes from; of a grid, curves over what varied.

#pragma once

#include <filesystem>
#include <vector>

#include "scenes/documents/study/study_report.h"

namespace overbend::documents {

// NAME.svg, .pdf and .png into the folder; returns what was written. Throws as the painter.
std::vector<std::filesystem::path> write_study_charts(const StudyReport& r,
                                                      const std::filesystem::path& folder);

}  // namespace overbend::documents
