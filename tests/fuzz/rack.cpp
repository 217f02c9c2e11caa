// Any text as a rack of tools: it is read, or refused with a CaseError.

#include <cstddef>
#include <cstdint>
#include <string>

#include "scenes/files/case/case_error.h"
#include "scenes/files/case/read_tools.h"
#include "scenes/files/case/strict_table.h"

using namespace overbend::files;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    const std::string text(reinterpret_cast<const char*>(bytes), size);
    try {
        const TomlFile file = parse_toml(text, "fuzzed.toml");
        read_tools(StrictTable(file), "", 20.0);
    } catch (const CaseError&) {
    }
    return 0;
}
