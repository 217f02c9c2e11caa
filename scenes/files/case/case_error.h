// What is wrong with a file that a person wrote: where, what, and what would be right.

#pragma once

#include <stdexcept>
#include <string>

namespace overbend::files {

// what() is one line, such as
//   cases/hook/case.toml:12: strip.thickness_mm: -1 is out of range; give a number from 0.05 to 20 (mm)
struct CaseError : std::runtime_error {
    CaseError(std::string file_, int line_, int column_, std::string key_, std::string wrong_,
              std::string right_);

    std::string file;   // as it was opened
    int line = 0;       // from 1; 0 when the file as a whole cannot be read
    int column = 0;     // from 1; 0 as above
    std::string key;    // with its tables, places in lists counted from 1: "step[2].stop.free_deg";
                        // empty where no key is to blame
    std::string wrong;  // what is wrong
    std::string right;  // what would be right
};

}  // namespace overbend::files
