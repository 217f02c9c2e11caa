// Any text as a material card: it is read, or refused with a CaseError.

#include <cstddef>
#include <cstdint>
#include <string>

#include "scenes/files/case/case_error.h"
#include "scenes/files/case/read_card.h"
#include "scenes/files/case/strict_table.h"

using namespace overbend::files;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    const std::string text(reinterpret_cast<const char*>(bytes), size);
    try {
        const TomlFile file = parse_toml(text, "fuzzed.toml");
        read_card_table(StrictTable(file), "fuzzed");
    } catch (const CaseError&) {
    }
    return 0;
}
