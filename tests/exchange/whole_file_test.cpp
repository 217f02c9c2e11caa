// A file is written whole or not at all, and nothing is left beside it.

#include "scenes/files/whole/whole_file.h"

#include <doctest/doctest.h>

#include <filesystem>
#include <stdexcept>
#include <string>

#include "tests/files/own_folder.h"

namespace {

namespace fs = std::filesystem;
using overbend::files::write_whole;
using overbend::tests::bytes_of;
using overbend::tests::files_below;
using overbend::tests::OwnFolder;

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
    const OwnFolder folder;
    const std::string text = std::string("line\r\n\0end", 10) + std::string(100000, 'x');
    write_whole(folder.path() / "a.json", text);
    CHECK(bytes_of(folder.path() / "a.json") == text);
    write_whole(folder.path() / "a.json", "");
    CHECK(bytes_of(folder.path() / "a.json").empty());
    CHECK(files_below(folder.path()).size() == 1);
}

TEST_CASE("What cannot be written is told with path and reason, and leaves all as it was") {
    const OwnFolder folder;
    fs::create_directories(folder.path() / "taken" / "inside");
    const fs::path missing = folder.path() / "missing" / "a.json";
    CHECK(reason_of(missing) == missing.string() + ": cannot be written: No such file or directory");
    CHECK(reason_of(folder.path() / "taken").find((folder.path() / "taken").string()) == 0);
    CHECK(reason_of("").find("it does not name a file") != std::string::npos);
    CHECK(fs::exists(folder.path() / "taken" / "inside"));
    CHECK(files_below(folder.path()).size() == 2);
}
