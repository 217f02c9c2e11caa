// Text with commas between, as spreadsheets read it (RFC 4180).

#pragma once

#include <string>
#include <vector>

namespace overbend::documents {

// Words in quotation marks.
std::string csv_words(const std::string& text);
// In so many significant digits at most, with a point in every locale.
std::string csv_number(double value, int digits = 9);
// A line without its end as its fields, without quotation marks; false: a mark is open at its end.
bool csv_fields(const std::string& line, std::vector<std::string>& fields);

}  // namespace overbend::documents
