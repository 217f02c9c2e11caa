#include "tests/house/read_text.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace overbend::tests {

namespace {

bool ends_with(const std::string& text, const std::string& ending) {
    return text.size() >= ending.size() &&
           text.compare(text.size() - ending.size(), ending.size(), ending) == 0;
}

}  // namespace

std::vector<std::string> files_under(const std::string& folder, const std::vector<std::string>& endings) {
    if (!std::filesystem::is_directory(folder)) throw std::runtime_error("no folder " + folder);
    std::vector<std::string> found;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
        const std::string path = entry.path().generic_string();
        const bool fits = std::any_of(endings.begin(), endings.end(),
                                      [&](const std::string& ending) { return ends_with(path, ending); });
        if (fits && entry.is_regular_file()) found.push_back(path);
    }
    if (found.empty()) throw std::runtime_error("no such files in " + folder);
    std::sort(found.begin(), found.end());
    return found;
}

std::string text_of(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    if (!file) throw std::runtime_error("cannot read " + path);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

std::vector<std::string> lines_of(const std::string& text) {
    std::istringstream stream(text);
    std::vector<std::string> lines;
    for (std::string line; std::getline(stream, line);) lines.push_back(line);
    return lines;
}

std::string folder_of(const std::string& path) {
    const std::size_t slash = path.rfind('/');
    return slash == std::string::npos ? "" : path.substr(0, slash);
}

}  // namespace overbend::tests
