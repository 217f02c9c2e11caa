// Reads a material card.

#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "scenes/files/case/describe.h"

namespace overbend::files {

// name_or_path  "dc01" is assets/materials/dc01.toml; what ends in .toml or has a slash is a path
// beside        the folder that a relative path starts from
//
// Throws CaseError: no such card (the nearest and all known ones are listed), or anything wrong in its file.
material::Card read_card(const std::string& name_or_path, const std::filesystem::path& beside);

// The names of all cards in assets/materials, in alphabetical order.
std::vector<std::string> known_cards();

// The table of one that stands in a case file.
class StrictTable;
CardTable read_card_table(const StrictTable& table, const std::string& name);

}  // namespace overbend::files
