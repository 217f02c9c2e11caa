// What is told from the keys of a table.

#pragma once

#include <string>

#include "scenes/files/case/fields.h"

namespace overbend::files {

// The names of those of the table itself, of every kind or of one.
Words key_names(const Keys& keys);
Words key_names(const Keys& keys, const std::string& kind);

// The unit at the end of a key, in words: "mm", "degrees"; empty where there is none.
std::string unit_of(const std::string& key);
// A value as it stands in the file, in the fewest digits that read back, and what of one is meant in the
// case.
double in_file(const std::string& key, double value);
double in_case(const std::string& key, double value);
// A key without its unit, as words: "nose radius".
std::string label_of(const std::string& key);

}  // namespace overbend::files
