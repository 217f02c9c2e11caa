// Reads the card of a tool steel.

#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "sim/shop/tool_steel.h"

namespace overbend::files {

class StrictTable;

// As read_card takes them: a name in assets/tool-steels, or a path. Throws CaseError.
shop::ToolSteel read_tool_steel(const std::string& name_or_path, const std::filesystem::path& beside);

// The steel that a key of a table names. Throws CaseError: one that cannot be found is that key's mistake.
struct NamedSteel {
    std::string name;  // the name, or the whole path of the file
    shop::ToolSteel card;
};
NamedSteel read_named_steel(const StrictTable& table, std::string_view key,
                            const std::filesystem::path& beside);

}  // namespace overbend::files
