// Any text as a drawing of an outline: it is read and its lines joined, or refused with a DxfError.

#include <cstddef>
#include <cstdint>
#include <string>

#include "scenes/files/dxf/chain.h"
#include "scenes/files/dxf/read_dxf.h"

using namespace overbend::files;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    const std::string text(reinterpret_cast<const char*>(bytes), size);
    try {
        chained(read_dxf(text, ""), 0.01);
    } catch (const DxfError&) {
    }
    return 0;
}
