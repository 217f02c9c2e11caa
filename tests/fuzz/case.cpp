// Any text as a case: it is read, or refused with a CaseError.

#include <cstddef>
#include <cstdint>
#include <string>

#include "scenes/files/case/read_case.h"

using namespace overbend::files;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    const std::string text(reinterpret_cast<const char*>(bytes), size);
    try {
        read_case_text(text, "fuzzed.toml", Needs::steps);
    } catch (const CaseError&) {
    }
    return 0;
}
