#include "scenes/files/case/read_tools.h"

#include <algorithm>
#include <utility>

#include "scenes/files/case/describe.h"
#include "scenes/files/case/named_asset.h"
#include "scenes/files/case/open_asset.h"
#include "scenes/files/case/read_tool.h"
#include "scenes/files/case/table_reader.h"

namespace overbend::files {

namespace {

// The tools of one file, behind those that are there.
void add_tools(const StrictTable& top, double width, const std::filesystem::path& beside, bool from_rack,
               std::vector<Tool>& tools) {
    for (const StrictTable& entry : top.tables("tool", {})) {
        Tool tool = read_tool(entry, width, beside);
        tool.from_rack = from_rack;
        const auto same = std::find_if(tools.begin(), tools.end(),
                                       [&](const Tool& other) { return other.name == tool.name; });
        if (same != tools.end())
            entry.complain("name",
                           "there is a tool " + in_quotes(tool.name) +
                               (same->from_rack && !from_rack ? " in the rack" : " before this one"),
                           "give each tool a different name");
        tools.push_back(std::move(tool));
    }
}

Rack read_rack_file(const TomlFile& file, double width) {
    const StrictTable top(file);
    Rack rack{read_as<RackTable>(top).title, {}};
    add_tools(top, width, std::filesystem::path(file.file).parent_path(), true, rack.tools);
    if (rack.tools.empty()) top.complain("tool", "the rack is empty", "give at least one [[tool]]");
    return rack;
}

}  // namespace

Rack read_rack(const std::string& name_or_path, const std::filesystem::path& beside, double width) {
    return read_rack_file(read_toml(file_of(name_or_path, beside, tool_racks)), width);
}

ToolsAtHand read_tools(const StrictTable& top, const std::filesystem::path& beside, double width) {
    ToolsAtHand found;
    if (top.has("rack")) {
        const std::string name = top.text("rack");
        const TomlFile file = open_asset(top, "rack", beside, tool_racks);
        found.tools = read_rack_file(file, width).tools;
        found.rack = is_path(name) ? path_from_anywhere(file.file) : name;
    }
    add_tools(top, width, beside, false, found.tools);
    return found;
}

}  // namespace overbend::files
