#include "scenes/files/case/open_asset.h"

#include "scenes/files/case/case_error.h"
#include "scenes/files/case/strict_table.h"

namespace overbend::files {

TomlFile open_asset(const StrictTable& table, std::string_view key, const std::filesystem::path& beside,
                    const AssetKind& kind) {
    try {
        return read_toml(file_of(table.text(key), beside, kind));
    } catch (const CaseError& error) {
        if (error.line > 0) throw;
        table.complain(key, error.wrong + " (" + error.file + ")", error.right);
    }
}

}  // namespace overbend::files
