// Rows of a study as CSV, one row a sample: number, part of its point, what varied, whether it was solved and
// good, what was measured, why it is not good. A row that was written, read and written again is the same.
//
// Source  CSV as RFC 4180 has it.

#pragma once

#include <optional>
#include <string>

#include "scenes/job/study/study_rows.h"

namespace overbend::documents {

// "row,part,..." with its line end.
std::string study_csv_head(const job::StudyPlan& plan, const std::vector<job::StudySize>& sizes);
std::string study_csv_row(const job::StudyPlan& plan, const job::StudyRow& row,
                          const std::vector<job::StudySize>& sizes);
// Nothing: it is no such row.
std::optional<job::StudyRow> read_study_row(const std::string& line, const job::StudyPlan& plan,
                                            const std::vector<job::StudySize>& sizes);

// By which rows of one study are known: case and study as they stand in their files, and where the nominal
// strip stops. 16 letters.
std::string study_mark(const job::StudyPlan& plan, const job::HeldStops& held, const std::string& case_bytes);

}  // namespace overbend::documents
