// Reads what a shop has: presses, tool steels, prices and rates.

#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

#include "scenes/files/case/case.h"

namespace overbend::files {

class StrictTable;

// A card, a name in assets/presses or in assets/tool-steels, or a path. Throws CaseError.
Press read_press_card(const std::string& name_or_path, const std::filesystem::path& beside);
shop::ToolSteel read_tool_steel(const std::string& name_or_path, const std::filesystem::path& beside);

// Fills in Case::press and its name: from a card, by its name or path, or from the table [press].
// Throws CaseError.
void read_press(const StrictTable& top, const std::filesystem::path& beside, Case& job);

// The steel that a key of a table names. Throws CaseError: one that cannot be found is that key's mistake.
struct NamedSteel {
    std::string name;  // the name, or the whole path of the file
    shop::ToolSteel card;
};
NamedSteel read_named_steel(const StrictTable& table, std::string_view key,
                            const std::filesystem::path& beside);

// The table [cost]. The press, if there is one, must have been read: its price and power hold where the table
// gives none. Throws CaseError.
std::optional<shop::CostRates> read_cost(const StrictTable& top, const Case& job);

// What holds where a case says nothing of costs.
shop::CostRates usual_rates(const Case& job);

}  // namespace overbend::files
