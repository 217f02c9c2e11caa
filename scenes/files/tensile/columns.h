// What the columns of a record are: by their headings, by an option, or by the size of their figures.

#pragma once

#include "scenes/files/tensile/text_table.h"
#include "scenes/files/tensile/units.h"

namespace overbend::files {

enum class Measured { engineering, true_ };

struct RecordColumn {
    int column = 0;  // from 0
    Quantity quantity = Quantity::ignored;
    std::string unit;     // as it stands; empty: none is given
    double factor = 1.0;  // to the program's unit
    Measured measured = Measured::engineering;
};

struct RecordColumns {
    std::optional<RecordColumn> strain;  // or elongation
    std::optional<RecordColumn> stress;  // or force
    std::optional<RecordColumn> width;   // or width strain
    std::vector<std::string> said;
};

// spec: the words of --columns, one a column: "elongation:mm", "true-strain:%", "-"; empty: they are found.
// Throws CaseError: columns that cannot be told, two that are the same, a unit that is none.
RecordColumns find_columns(const TextTable& table, const std::vector<std::string>& spec);

}  // namespace overbend::files
