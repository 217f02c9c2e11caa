// Reads the press of a case: a card, by its name or path, or the table [press].

#pragma once

#include <filesystem>
#include <string>

#include "scenes/files/case/case.h"

namespace overbend::files {

class StrictTable;

// Fills in Case::press and its name. Throws CaseError.
void read_press(const StrictTable& top, const std::filesystem::path& beside, Case& job);

// A card: a name in assets/presses, or a path. Throws CaseError.
Press read_press_card(const std::string& name_or_path, const std::filesystem::path& beside);

}  // namespace overbend::files
