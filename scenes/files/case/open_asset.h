// Opens the file that a key names, one that comes with the program or one of one's own.

#pragma once

#include <filesystem>
#include <string_view>

#include "scenes/files/case/named_asset.h"
#include "scenes/files/case/toml_file.h"

namespace overbend::files {

class StrictTable;

// beside  the folder that a relative path starts from
// Throws CaseError: an unknown name or a missing file is reported at that key, a file that cannot be read
// its own.
TomlFile open_asset(const StrictTable& table, std::string_view key, const std::filesystem::path& beside,
                    const AssetKind& kind);

}  // namespace overbend::files
