#include "scenes/files/case/read_card.h"

#include <algorithm>
#include <map>

#include "scenes/files/case/named_asset.h"
#include "scenes/files/case/strict_table.h"
#include "sim/errors.h"

namespace overbend::files {

namespace {

// Wide enough for every metal, narrow enough to catch a number in GPa, psi or g/cm3.
constexpr Range modulus = from_to(1e3, 1e6);         // MPa
constexpr Range density = from_to(100.0, 25e3);      // kg/m3
constexpr Range stress = above_to(0.0, 1e4);         // MPa
constexpr Range hardening_rate = from_to(0.0, 1e6);  // MPa
constexpr Range exponent = above_below(0.0, 1.0);
constexpr Range saturation_rate = above_to(0.0, 1e4);

// What each law's table must have besides `law`.
const std::map<std::string, Words> keys_of_law = {{"swift", {"law", "K_MPa", "e0", "n"}},
                                                  {"hollomon", {"law", "K_MPa", "n"}},
                                                  {"voce", {"law", "Y_MPa", "Q_MPa", "b"}},
                                                  {"linear", {"law", "Y_MPa", "H_MPa"}},
                                                  {"table", {"law", "plastic_strain", "stress_MPa"}}};

Words every_law_key() {
    Words all = {"law"};
    for (const auto& [law, keys] : keys_of_law) {
        for (const std::string& key : keys) {
            if (std::find(all.begin(), all.end(), key) == all.end()) all.push_back(key);
        }
    }
    return all;
}

material::Hardening read_hardening(StrictTable table) {
    if (!table.has("law")) table.expect(every_law_key());
    const std::string law = table.word("law", {"swift", "hollomon", "voce", "linear", "table"});
    table.expect(keys_of_law.at(law));
    if (law == "swift") {
        return material::Swift{table.number("K_MPa", stress), table.number("e0", above_to(0.0, 1.0)),
                               table.number("n", exponent)};
    }
    if (law == "hollomon")
        return material::Hollomon{table.number("K_MPa", stress), table.number("n", exponent)};
    if (law == "voce") {
        return material::Voce{table.number("Y_MPa", stress), table.number("Q_MPa", from_to(0.0, 1e4)),
                              table.number("b", saturation_rate)};
    }
    if (law == "linear") {
        return material::Linear{table.number("Y_MPa", stress), table.number("H_MPa", hardening_rate)};
    }
    return material::Table{table.numbers("plastic_strain", from_to(0.0, 10.0)),
                           table.numbers("stress_MPa", stress)};
}

std::vector<material::Backstress> read_backstress(const StrictTable& table) {
    const std::vector<StrictTable> entries = table.tables("backstress", {"C_MPa", "gamma"});
    if (entries.size() > material::most_backstresses) {
        table.complain("backstress", std::to_string(entries.size()) + " back stresses are given",
                       "give one or two");
    }
    std::vector<material::Backstress> found;
    for (const StrictTable& entry : entries)
        found.push_back({entry.number("C_MPa", hardening_rate), entry.number("gamma", from_to(0.0, 1e5))});
    return found;
}

std::optional<material::ModulusDrop> read_modulus_drop(const StrictTable& table, double youngs_modulus) {
    if (!table.has("modulus_drop")) return std::nullopt;
    const StrictTable drop = table.table("modulus_drop", {"to_MPa", "rate"});
    return material::ModulusDrop{drop.number("to_MPa", above_to(0.0, youngs_modulus)),
                                 drop.number("rate", above_to(0.0, 1e4))};
}

}  // namespace

const std::vector<std::string>& card_keys() {
    static const Words keys = {"title",
                               "source",
                               "sources",
                               "youngs_modulus_MPa",
                               "poisson",
                               "density_kg_m3",
                               "hardening",
                               "backstress",
                               "modulus_drop",
                               "r_value",
                               "tensile_strength_MPa",
                               "elongation_percent",
                               "metal",
                               "hardness"};
    return keys;
}

std::vector<std::string> known_cards() {
    return known_names(material_cards);
}

std::vector<std::pair<std::string, std::string>> read_sources(const StrictTable& table) {
    if (!table.has("sources")) return {};
    Words numbers = card_keys();
    for (const char* other : {"title", "source", "sources"})
        numbers.erase(std::find(numbers.begin(), numbers.end(), other));
    const StrictTable sources = table.table("sources", numbers);
    std::vector<std::pair<std::string, std::string>> found;
    for (const std::string& key : sources.present()) found.emplace_back(key, sources.text(key));
    return found;
}

material::Card read_card_table(const StrictTable& table, const std::string& name) {
    material::Card card;
    card.name = name;
    card.title = table.text("title");
    card.source = table.text("source");
    read_sources(table);  // they must name what the card has
    card.youngs_modulus = table.number("youngs_modulus_MPa", modulus);
    card.poisson = table.number("poisson", from_below(0.0, 0.5));
    card.density = table.number("density_kg_m3", density);
    card.hardening = read_hardening(table.table("hardening", {}));
    card.backstress = read_backstress(table);
    card.modulus_drop = read_modulus_drop(table, card.youngs_modulus);
    card.r_value = table.number_or("r_value", 1.0, from_to(0.1, 10.0));
    card.tensile_strength = table.number_or("tensile_strength_MPa", 0.0, stress);
    card.elongation = table.number_or("elongation_percent", 0.0, above_to(0.0, 100.0)) / 100.0;
    if (table.has("metal")) card.metal = table.word("metal", material::metal_words());
    const std::string hardness = table.word_or("hardness", "medium", {"soft", "medium", "hard"});
    card.hardness = hardness == "soft"   ? material::Hardness::soft
                    : hardness == "hard" ? material::Hardness::hard
                                         : material::Hardness::medium;
    try {
        material::check(card);
    } catch (const OutOfRange& error) {
        table.complain("hardening", error.name + ": " + error.wrong, error.right);
    }
    return card;
}

material::Card read_card(const std::string& name_or_path, const std::filesystem::path& beside) {
    const TomlFile file = read_toml(file_of(name_or_path, beside, material_cards));
    StrictTable table(file);
    table.expect(card_keys());
    return read_card_table(table, name_or_path);
}

}  // namespace overbend::files
