// The figures of handbooks, textbooks and standards that the checks hold ours against: handbook.csv beside.
//
// Each row has where it comes from, and whether it was seen there or is from memory.

#pragma once

#include <string>
#include <vector>

#include "tests/outside/table.h"

namespace overbend::tests {

struct HandbookRow {
    std::string id, quantity, value, unit, tolerance_note, source, seen_or_memory;
    double number(int index = 0) const;  // the index-th number in its value; throws std::out_of_range
    // What a row of the table is about; the group and the quantity are the check's.
    About about(const std::string& group, const std::string& source_name, const std::string& of) const {
        return {group, source_name, id, of, ""};
    }
};

const std::vector<HandbookRow>& handbook();
const HandbookRow& handbook_row(const std::string& id);  // throws std::out_of_range
std::vector<HandbookRow> handbook_rows(const std::string& beginning_of_id);

// The numbers in a text, in their order; signs are not read.
std::vector<double> numbers_in(const std::string& text);

}  // namespace overbend::tests
