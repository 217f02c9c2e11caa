#include "tests/files/own_folder.h"

#include <doctest/doctest.h>
#include <unistd.h>

#include <algorithm>
#include <cstddef>
#include <fstream>
#include <iterator>
#include <system_error>

namespace overbend::tests {

namespace fs = std::filesystem;

namespace {

std::size_t only_place(const std::string& text, const std::string& part) {
    const std::size_t at = text.find(part);
    CAPTURE(part);
    REQUIRE(at != std::string::npos);
    REQUIRE(text.find(part, at + 1) == std::string::npos);
    return at;
}

}  // namespace

OwnFolder::OwnFolder() {
    static int count = 0;
    path_ = fs::temp_directory_path() /
            ("overbend_check_" + std::to_string(::getpid()) + "_" + std::to_string(++count));
    fs::remove_all(path_);
    fs::create_directories(path_);
}

OwnFolder::~OwnFolder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
}

fs::path OwnFolder::write(const std::string& name, const std::string& text) const {
    fs::path file = path_ / name;
    fs::create_directories(file.parent_path());
    std::ofstream(file, std::ios::binary) << text;
    return file;
}

std::string bytes_of(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

Files files_below(const fs::path& folder) {
    Files files;
    if (!fs::exists(folder)) return files;
    for (const fs::directory_entry& entry : fs::recursive_directory_iterator(folder)) {
        const std::string name = fs::relative(entry.path(), folder).string();
        if (entry.is_directory())
            files[name + "/"] = "";
        else
            files[name] = bytes_of(entry.path());
    }
    return files;
}

std::string replaced(const std::string& text, const std::string& from, const std::string& to) {
    const std::size_t at = only_place(text, from);
    return text.substr(0, at) + to + text.substr(at + from.size());
}

int line_of(const std::string& text, const std::string& part) {
    const auto end = text.begin() + static_cast<std::ptrdiff_t>(only_place(text, part));
    return 1 + static_cast<int>(std::count(text.begin(), end, '\n'));
}

}  // namespace overbend::tests
