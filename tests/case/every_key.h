// Walks a TOML text whose keys stand each on a line of its own under their table's header.

#pragma once

#include <string>
#include <vector>

namespace overbend::tests {

struct KeyLine {
    int line = 0;        // from 1
    int table_line = 0;  // of the header of its table; 1 for the top of the file
    std::string table;   // path of the table: "step[2].stop"; empty for the top
    std::string key;     // alone
    std::string value;   // as it stands there
    std::string path() const { return table.empty() ? key : table + "." + key; }
    // Without the places in lists: "step.stop.free_deg".
    std::string plain_path() const;
};

std::vector<KeyLine> every_key(const std::string& text);

// The text with that line replaced, or left out.
std::string with_line(const std::string& text, int line, const std::string& replacement);
std::string without_line(const std::string& text, int line);

}  // namespace overbend::tests
