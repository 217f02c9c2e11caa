// A file is written whole or not at all, and nothing is left beside it.

#include "scenes/exchange/whole_file.h"

#include <doctest/doctest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>

namespace {

namespace fs = std::filesystem;
using overbend::scenes::write_whole;

// A folder of one check, gone with it.
struct Folder {
    fs::path path = fs::temp_directory_path() / ("overbend_whole_file_" + std::to_string(::getpid()));
    Folder() { fs::create_directories(path); }
    ~Folder() { fs::remove_all(path); }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    int entries() const {
        return static_cast<int>(std::distance(fs::directory_iterator(path), fs::directory_iterator()));
    }
};

std::string read(const fs::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

std::string reason_of(const fs::path& path) {
    try {
        write_whole(path, "text");
    } catch (const std::runtime_error& error) {
        return error.what();
    }
    return "";
}

}  // namespace

TEST_CASE("Every byte is written, and what stood there is replaced") {
    const Folder folder;
    const std::string text = std::string("line\r\n\0end", 10) + std::string(100000, 'x');
    write_whole(folder.path / "a.json", text);
    CHECK(read(folder.path / "a.json") == text);
    write_whole(folder.path / "a.json", "");
    CHECK(read(folder.path / "a.json").empty());
    CHECK(folder.entries() == 1);
}

TEST_CASE("What cannot be written is told with path and reason, and leaves all as it was") {
    const Folder folder;
    fs::create_directories(folder.path / "taken" / "inside");
    const fs::path missing = folder.path / "missing" / "a.json";
    CHECK(reason_of(missing) == missing.string() + ": cannot be written: No such file or directory");
    CHECK(reason_of(folder.path / "taken").find((folder.path / "taken").string()) == 0);
    CHECK(reason_of("").find("it names no file") != std::string::npos);
    CHECK(fs::exists(folder.path / "taken" / "inside"));
    CHECK(folder.entries() == 1);
}
