// The groups of an ASCII DXF file: pairs of lines, a code and its value. Looked through by hand before
// dxflib sees any of it, since that neither tells lines nor bears what is not as it should be.

#pragma once

#include <filesystem>
#include <stdexcept>
#include <string>
#include <vector>

namespace overbend::files {

// What is wrong with a DXF file; line from 1, or 0 where it is the whole file.
struct DxfError : std::runtime_error {
    DxfError(int line_, const std::string& wrong_, const std::string& right_)
        : std::runtime_error(wrong_ + "; " + right_), line(line_), wrong(wrong_), right(right_) {}
    int line = 0;
    std::string wrong;
    std::string right;
};

struct DxfGroup {
    int code = 0;
    std::string value;  // without blanks about it
    int line = 0;       // of the value
};

// Throws DxfError: not there, not readable, too large.
std::string read_dxf_text(const std::filesystem::path& file);

// Throws DxfError: binary, a code that is no number, without the EOF at its end.
std::vector<DxfGroup> dxf_groups(const std::string& text);

// The value as a finite number. Throws DxfError.
double dxf_number(const DxfGroup& group);
int dxf_whole(const DxfGroup& group);

}  // namespace overbend::files
