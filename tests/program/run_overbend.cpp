#include "tests/program/run_overbend.h"

#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace overbend::tests {

Run run_overbend(const std::string& options, const std::string& before) {
    const std::filesystem::path errors =
        std::filesystem::temp_directory_path() / ("overbend_test_" + std::to_string(::getpid()) + ".stderr");
    const std::string line =
        before + "'" + std::string(OVERBEND_PROGRAM) + "' " + options + " 2>'" + errors.string() + "'";

    Run run;
    std::FILE* pipe = ::popen(line.c_str(), "r");
    if (pipe == nullptr) return run;
    std::array<char, 4096> part;
    for (std::size_t n = 0; (n = std::fread(part.data(), 1, part.size(), pipe)) > 0;)
        run.out.append(part.data(), n);
    const int ended = ::pclose(pipe);
    if (WIFEXITED(ended)) run.status = WEXITSTATUS(ended);

    std::ifstream file(errors, std::ios::binary);
    run.error.assign(std::istreambuf_iterator<char>(file), {});
    std::error_code ignored;
    std::filesystem::remove(errors, ignored);
    return run;
}

}  // namespace overbend::tests
