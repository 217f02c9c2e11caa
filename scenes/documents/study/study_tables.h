// A study in tables and sentences.

#pragma once

#include "scenes/documents/study/study_report.h"
#include "scenes/documents/tables/table.h"

namespace overbend::documents {

Table inputs_table(const StudyReport& r);      // what varied, and how
Table scatter_table(const StudyReport& r);     // sizes: mean, deviation, range, Cp and Cpk
Table importance_table(const StudyReport& r);  // of angles and of what is off most: what it comes from
Table stops_table(const StudyReport& r);       // where each stop is, and where it would be better
Table worth_table(const StudyReport& r);       // tolerances halved

// All of these that have rows.
std::vector<Table> study_tables(const StudyReport& r);
// The verdict in a sentence, then what it does not tell.
std::string good_words(const StudyReport& r);
std::vector<std::string> study_notes(const StudyReport& r);

// "82 %", "99.4 % to 99.9 %"
std::string per_cent_words(double share);

}  // namespace overbend::documents
