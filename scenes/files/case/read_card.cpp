#include "scenes/files/case/read_card.h"

#include "scenes/files/case/named_asset.h"
#include "scenes/files/case/table_reader.h"
#include "sim/errors.h"

namespace overbend::files {

std::vector<std::string> known_cards() {
    return known_names(material_cards);
}

CardTable read_card_table(const StrictTable& table, const std::string& name) {
    CardTable given = read_as<CardTable>(table);
    given.card.name = name;
    if (given.card.backstress.size() > material::most_backstresses)
        table.complain("backstress",
                       std::to_string(given.card.backstress.size()) + " back stresses are given",
                       "give one or two");
    if (given.card.modulus_drop && given.card.modulus_drop->to > given.card.youngs_modulus)
        table.table("modulus_drop", {})
            .complain("to_MPa", written(given.card.modulus_drop->to) + " is more than Young's modulus",
                      "give at most " + written(given.card.youngs_modulus) + " (MPa)");
    try {
        material::check(given.card);
    } catch (const OutOfRange& error) {
        table.complain("hardening", error);
    }
    return given;
}

material::Card read_card(const std::string& name_or_path, const std::filesystem::path& beside) {
    const TomlFile file = read_toml(file_of(name_or_path, beside, material_cards));
    return read_card_table(StrictTable(file), name_or_path).card;
}

}  // namespace overbend::files
