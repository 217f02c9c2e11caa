// What the command `card` prints: figures of each test and of the coil, and the laws.

#pragma once

#include "scenes/documents/card/coil_report.h"
#include "scenes/documents/tables/table.h"

namespace overbend::documents {

Table tests_table(const CoilReport& report);
Table laws_table(const CoilReport& report);
// "Springback of the sample bend: 4.21 to 4.55 deg between 3 laws that fit alike ..."
std::string spread_words(const CoilReport& report);

}  // namespace overbend::documents
