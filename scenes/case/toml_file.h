// A TOML file in memory, with its name for messages.
//
// Only the readers in scenes/case include this; nobody else needs to know TOML.

#pragma once

#include <toml++/toml.h>
#include <filesystem>
#include <string>

namespace overbend::scenes {

struct TomlFile {
    std::string file;  // as it was opened
    toml::table root;
};

// Throws CaseError: not there, not readable, larger than any case can be, not TOML.
TomlFile read_toml(const std::filesystem::path& file);

}  // namespace overbend::scenes
