// A file is written whole or not at all, and nothing is left beside it.

#include "render/output/whole_file.h"

#include <doctest/doctest.h>

#include <filesystem>
#include <memory>
#include <stdexcept>
#include <string>
#include <vector>

#include "render/output/unfinished.h"
#include "tests/files/full_disk.h"
#include "tests/files/own_folder.h"

namespace {

namespace fs = std::filesystem;
using overbend::output::PartFile;
using overbend::output::write_whole;
using overbend::tests::bytes_of;
using overbend::tests::files_below;
using overbend::tests::FullDisk;
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

TEST_CASE("On a full disk what stood there stays, and no part file is left") {
    const OwnFolder folder;
    folder.write("a.json", "earlier");
    {
        const FullDisk full(1000);
        CHECK_THROWS_WITH_AS(write_whole(folder.path() / "a.json", std::string(5000, 'x')),
                             doctest::Contains("a.json: cannot be written: File too large"),
                             std::runtime_error);
    }
    CHECK(files_below(folder.path()).size() == 1);
    CHECK(bytes_of(folder.path() / "a.json") == "earlier");
}

TEST_CASE("A link that stands at the path is replaced, not followed") {
    const OwnFolder folder;
    folder.write("other", "other");
    fs::create_symlink(folder.path() / "other", folder.path() / "a.json");
    write_whole(folder.path() / "a.json", "text");
    CHECK(bytes_of(folder.path() / "other") == "other");
    CHECK_FALSE(fs::is_symlink(folder.path() / "a.json"));
    CHECK(bytes_of(folder.path() / "a.json") == "text");
}

TEST_CASE("Part files of one path have names of their own, and go unless they are named") {
    const OwnFolder folder;
    {
        PartFile one(folder.path() / "a.json");
        const PartFile other(folder.path() / "a.json");
        CHECK(one.place() != other.place());
        // Hidden, and sixteen digits from the system's random numbers.
        CHECK(one.place().filename().string().rfind(".overbend-", 0) == 0);
        CHECK(one.place().filename().string().size() == std::string(".overbend-").size() + 16);
        one.write("text");
        CHECK(one.size() == 4);
        CHECK_FALSE(fs::exists(folder.path() / "a.json"));
        one.give_name();
        CHECK(files_below(folder.path()).size() == 2);
    }
    CHECK(files_below(folder.path()).size() == 1);
    CHECK(bytes_of(folder.path() / "a.json") == "text");
    // As any new file of this user.
    folder.write("usual", "");
    CHECK(fs::status(folder.path() / "a.json").permissions() ==
          fs::status(folder.path() / "usual").permissions());
}

TEST_CASE("A name as long as the folder takes is written") {
    const OwnFolder folder;
    const std::string name(255, 'n');
    write_whole(folder.path() / name, "text");
    CHECK(bytes_of(folder.path() / name) == "text");
    CHECK(files_below(folder.path()).size() == 1);
}

TEST_CASE("What a signal's handler removes are the files under way, and no others") {
    const OwnFolder folder;
    write_whole(folder.path() / "whole", "text");
    {
        PartFile one(folder.path() / "one"), named(folder.path() / "named");
        const PartFile other(folder.path() / "other");
        named.give_name();
        CHECK(files_below(folder.path()).size() == 4);
        overbend::output::remove_unfinished();
        CHECK(files_below(folder.path()).size() == 2);
    }
    {
        // More than are known at a time.
        std::vector<std::unique_ptr<PartFile>> many;
        for (int i = 0; i < 100; ++i) many.push_back(std::make_unique<PartFile>(folder.path() / "many"));
        overbend::output::remove_unfinished();
    }
    CHECK(files_below(folder.path()).size() == 2);
    CHECK(bytes_of(folder.path() / "whole") == "text");
}
