// A case file read for the window: the case, or what is wrong with a file, with the line where it stands, for
// the person who has it open beside the window.

#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "scenes/files/case/case.h"
#include "scenes/files/case/case_error.h"

namespace overbend::window {

struct FileTrouble {
    std::string file;
    int line = 0;     // from 1; 0: the file as a whole
    std::string key;  // empty: no key is to blame
    std::string wrong;
    std::string right;
    std::string text;  // the line as it stands in the file, cut short where it is very long; empty: no line

    std::string place_words() const;  // "case.toml, line 12, strip.thickness_mm"
};

// Reads the line from the file.
FileTrouble trouble_of(const files::CaseError& error);

// One of both.
struct ReadForWindow {
    std::optional<files::Case> c;
    std::optional<FileTrouble> trouble;
};

// Reads it, with all that it names. Throws nothing that is a std::exception.
ReadForWindow read_for_window(const std::filesystem::path& file);

}  // namespace overbend::window
