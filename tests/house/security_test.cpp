// What assets/manual/security.md says of the sources: one place starts programs, one folder writes files, and
// none of them opens a network.

#include <doctest/doctest.h>

#include <regex>
#include <string>
#include <vector>

#include "tests/house/read_text.h"

using namespace overbend::tests;

namespace {

// Sources outside `home` where the pattern stands in code.
std::vector<std::string> sources_with(const std::string& pattern, const std::string& home) {
    const std::regex regex(pattern);
    std::vector<std::string> found;
    for (const std::string folder : {"sim", "render", "scenes"})
        for (const std::string& path : files_under(folder, {".cpp", ".h"}))
            for (const std::string& line : lines_of(text_of(path)))
                if (std::regex_search(line.substr(0, line.find("//")), regex) &&
                    (home.empty() || path.rfind(home, 0) != 0))
                    found.push_back(path + ": " + line);
    return found;
}

void check_none(const std::string& pattern, const std::string& home) {
    CAPTURE(pattern);
    for (const std::string& found : sources_with(pattern, home)) FAIL_CHECK(found);
    if (!home.empty()) CHECK_FALSE(sources_with(pattern, "").empty());  // the pattern finds what it is for
}

}  // namespace

TEST_SUITE("house") {
    TEST_CASE("programs are started in one place, and never by a shell") {
        check_none(R"(\bposix_spawnp?\()", "render/film/child_process.cpp");
        check_none(R"(\b(system|popen|execl|execlp|execle|execv|execvp|execve|v?fork)\s*\()", "");
    }

    TEST_CASE("files are written in one folder, and no network is opened") {
        check_none(R"(\bO_CREAT\b|\brename(at2?)?\(AT_FDCWD|filesystem::rename)", "render/output/");
        check_none(R"(\b(ofstream|fopen|freopen|mkstemp|tmpnam|tmpfile)\b)", "");
        check_none(R"(\b(connect|getaddrinfo|gethostbyname|bind|listen)\s*\()", "");
    }
}
