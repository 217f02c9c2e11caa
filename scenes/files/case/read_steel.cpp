#include "scenes/files/case/read_steel.h"

#include "scenes/files/case/describe.h"
#include "scenes/files/case/table_reader.h"

namespace overbend::files {

namespace {

shop::ToolSteel read_steel(const TomlFile& file, const std::string& name) {
    const StrictTable table(file);
    SteelTable given = read_as<SteelTable>(table);
    if (given.rockwell && given.vickers)
        table.complain("hardness_HV", "the hardness is given twice", "remove one of them");
    if (!given.rockwell && !given.vickers)
        table.complain_missing("hardness_HV",
                               "give hardness_HV or hardness_HRC: the hardness at which the figures hold");
    given.steel.hardness = given.vickers ? *given.vickers : shop::vickers_of_rockwell(*given.rockwell);
    given.steel.name = name;
    return given.steel;
}

}  // namespace

shop::ToolSteel read_tool_steel(const std::string& name_or_path, const std::filesystem::path& beside) {
    return read_steel(read_toml(file_of(name_or_path, beside, tool_steels)), name_or_path);
}

NamedSteel read_named_steel(const StrictTable& table, std::string_view key,
                            const std::filesystem::path& beside) {
    const TomlFile file = open_asset(table, key, beside, tool_steels);
    const std::string given = table.text(key);
    const std::string name = is_path(given) ? path_from_anywhere(file.file) : given;
    return {name, read_steel(file, name)};
}

}  // namespace overbend::files
