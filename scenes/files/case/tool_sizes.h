// The sizes of a tool by name, whatever its kind: for showing, comparing and changing them.

#pragma once

#include <string>
#include <vector>

#include "scenes/files/case/case.h"

namespace overbend::files {

enum class SizeUnit { mm, rad };

struct ToolSize {
    std::string words;  // unique within the tool: "opening", "opening of face 2"
    std::string key;    // of a case file: "opening_mm"
    SizeUnit unit = SizeUnit::mm;
    double value = 0.0;
};

// Those that a case file gives, without springs, reliefs and what the steel bears. An outline has none.
std::vector<ToolSize> sizes_of(const Tool& tool);

// Another value for one of them; index into sizes_of. Sizes that hold where a file leaves them out (a die's
// width and height, a shank) and were as usual before are as usual afterwards too. Whether such a tool can be
// made is seen when the case is read.
void set_size(Tool& tool, int size, double value);

}  // namespace overbend::files
