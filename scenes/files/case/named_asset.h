// Files that a case names: one of those that come with the program, by its name, or a path of one's own.

#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace overbend::files {

struct AssetKind {
    const char* folder;  // below the folder of assets: "materials"
    const char* one;     // "material card"
    const char* many;    // "cards"
};
constexpr AssetKind material_cards = {"materials", "material card", "cards"};
constexpr AssetKind tool_racks = {"tools", "rack of tools", "racks"};
constexpr AssetKind presses = {"presses", "press", "presses"};
constexpr AssetKind tool_steels = {"tool-steels", "tool steel", "tool steels"};

// Whether it is the path of a .toml file, and no name: it ends in .toml or has a slash.
bool is_path(const std::string& name_or_path);

// All that come with the program, in alphabetical order.
std::vector<std::string> known_names(const AssetKind& kind);

// beside  the folder that a relative path starts from
// Throws CaseError: no such name (the nearest and all known ones are listed). Whether a path has a file is
// seen when it is read.
std::filesystem::path file_of(const std::string& name_or_path, const std::filesystem::path& beside,
                              const AssetKind& kind);

// Of a file that is there: its whole path, right from any folder.
std::string path_from_anywhere(const std::filesystem::path& file);

}  // namespace overbend::files
