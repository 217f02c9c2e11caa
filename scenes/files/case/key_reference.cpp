#include "scenes/files/case/key_reference.h"

#include <stdexcept>

#include "scenes/files/case/describe.h"

namespace overbend::files {

std::vector<ReferenceTable> key_reference() {
    return {{"", "The top of a case", keys_of<TopTable>()},
            {"[strip]", "The strip", keys_of<StripTable>()},
            {"[part]", "The drawing", keys_of<PartTable>()},
            {"[[tool]]", "A tool, of the case or in a rack", keys_of<Tool>()},
            {"[[step]]", "A stroke", keys_of<StepTable>()},
            {"[press]", "The press", keys_of<Press>()},
            {"[handling]", "Handling times", keys_of<Handling>()},
            {"[cost]", "Prices and rates", keys_of<CostTable>()},
            {"[run]", "How the case is computed", keys_of<RunOptions>()},
            {"[material]", "A material card, here or as a file of its own", keys_of<CardTable>()},
            {"press.toml", "A press, as a file of its own", keys_of<PressCard>()},
            {"rack.toml", "A rack of tools", keys_of<RackTable>()},
            {"steel.toml", "The card of a tool steel", keys_of<SteelTable>()}};
}

KeyEntry key_of_case(const std::string& table, const std::string& name) {
    for (const ReferenceTable& each : key_reference())
        if (each.header == "[" + table + "]")
            for (const KeyEntry& key : each.keys)
                if (key.table.empty() && key.name == name) return key;
    throw std::logic_error("no key " + name + " in " + table);
}

}  // namespace overbend::files
