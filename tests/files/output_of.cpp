#include "tests/files/output_of.h"

#include <array>
#include <cstdio>
#include <stdexcept>

namespace overbend::tests {

std::string output_of(const std::string& command) {
    std::FILE* pipe = ::popen(command.c_str(), "r");
    if (pipe == nullptr) throw std::runtime_error("cannot be run: " + command);
    std::string out;
    std::array<char, 4096> part;
    for (std::size_t n = 0; (n = std::fread(part.data(), 1, part.size(), pipe)) > 0;)
        out.append(part.data(), n);
    if (::pclose(pipe) != 0) throw std::runtime_error("does not end well: " + command);
    return out;
}

}  // namespace overbend::tests
