// Reads a case file (TOML). Its keys, and those of racks and cards, are described in describe.h;
// key_reference.h lists them.

#pragma once

#include <filesystem>

#include "scenes/files/case/case.h"
#include "scenes/files/case/case_error.h"

namespace overbend::files {

// What must stand in a case: tools, and steps that make every bend; or, to plan them, the strip and its
// drawing alone. Tools and steps that stand there all the same are read and checked as ever, but need not
// make all bends. A plan asks besides that there are no more bends than can be put in order, and no hems.
enum class Needs { steps, drawing_alone, plan };

// Checks everything that can be told without pressing: keys, ranges, names, that each tool can be made and
// that the tools of each step go together with this strip.
// Throws CaseError for the first thing that is wrong, in the case file or in the card it names.
Case read_case(const std::filesystem::path& file, Needs needs = Needs::steps);

// Of a text that would stand in that file. Throws as above, with lines of the text.
Case read_case_text(const std::string& text, const std::filesystem::path& file, Needs needs = Needs::steps);

}  // namespace overbend::files
