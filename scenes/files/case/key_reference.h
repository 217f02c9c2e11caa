// Every key of a case, a rack and a card: the reference that people read.

#pragma once

#include <string>
#include <vector>

#include "scenes/files/case/fields.h"

namespace overbend::files {

struct ReferenceTable {
    std::string header;  // as it stands in a file: "[strip]", "[[tool]]"; empty: the top of the file
    std::string words;   // what it is
    Keys keys;           // of the tables within it too
};

// In the order in which a case is best read; after it, the files that it may name.
std::vector<ReferenceTable> key_reference();

// A key of a case by its table and name: "strip", "thickness_mm". It must be there.
KeyEntry key_of_case(const std::string& table, const std::string& name);

}  // namespace overbend::files
