// Any text as what the window remembers: it is taken as far as it makes sense, and is no error.

#include <unistd.h>

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>

#include "scenes/window/shared/remembered.h"

using namespace overbend;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    static const std::filesystem::path file =
        std::filesystem::temp_directory_path() / ("overbend_fuzz_" + std::to_string(::getpid()) + ".json");
    std::ofstream(file, std::ios::binary)
        .write(reinterpret_cast<const char*>(bytes), static_cast<std::streamsize>(size));
    const window::Remembered r = window::read_remembered(file);
    const bool sane = r.width > 0 && r.height > 0 && r.springback_scale >= 1.0 &&
                      r.springback_scale <= 20.0 && r.speed > 0.0;
    if (!sane) std::abort();
    std::filesystem::remove(file);
    return 0;
}
