#include "scenes/case/open_asset.h"

#include "scenes/case/case_error.h"
#include "scenes/case/strict_table.h"

namespace overbend::scenes {

TomlFile open_asset(const StrictTable& table, std::string_view key, const std::filesystem::path& beside,
                    const AssetKind& kind) {
    try {
        return read_toml(file_of(table.text(key), beside, kind));
    } catch (const CaseError& error) {
        if (error.line > 0) throw;
        table.complain(key, error.wrong + " (" + error.file + ")", error.right);
    }
}

}  // namespace overbend::scenes
