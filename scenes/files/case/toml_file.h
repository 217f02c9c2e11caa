// A TOML file in memory, with its name for messages.
//
// Only the readers in scenes/files/case include this; nothing else depends on TOML.

#pragma once

#include <toml++/impl/forward_declarations.h>
#include <filesystem>
#include <memory>
#include <string>

namespace overbend::files {

struct TomlFile {
    struct Delete {
        void operator()(const toml::table* table) const;
    };
    std::string file;  // as it was opened
    std::unique_ptr<const toml::table, Delete> root;
};

// Throws CaseError: not there, not readable, larger or deeper than any case can be, not TOML.
TomlFile read_toml(const std::filesystem::path& file);

// Of a text that is in no file, or not yet. as: what messages call it. Throws CaseError: not
// TOML, too deep.
TomlFile parse_toml(const std::string& text, const std::string& as);

}  // namespace overbend::files
