// Files that change on disk are noticed, and what is wrong with one is told with its line.

#include <doctest/doctest.h>

#include <chrono>
#include <thread>

#include "scenes/case/read_case.h"
#include "scenes/window/watched_file.h"
#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"

using namespace overbend;
using scenes::WatchedFiles;

namespace {

// Until something is told; false after so many seconds without.
bool told_within(WatchedFiles& watched, double seconds) {
    const auto begin = std::chrono::steady_clock::now();
    while (std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count() < seconds) {
        if (watched.take()) return true;
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    }
    return false;
}

}  // namespace

TEST_CASE("a file that is written, goes or comes is told, once, and no more when it is accepted") {
    const tests::OwnFolder folder;
    const std::filesystem::path a = folder.write("a.toml", "one"), b = folder / "b.toml";
    WatchedFiles watched;
    watched.watch({a, b});
    CHECK_FALSE(told_within(watched, 1.2));
    folder.write("a.toml", "three");
    REQUIRE(told_within(watched, 5.0));
    REQUIRE(watched.changed().size() == 1);
    CHECK(watched.changed()[0] == a);
    watched.accept();
    CHECK(watched.changed().empty());
    CHECK_FALSE(told_within(watched, 1.2));
    folder.write("b.toml", "");
    REQUIRE(told_within(watched, 5.0));
    CHECK(watched.changed()[0] == b);
    watched.watch({a, b});
    CHECK(watched.changed().empty());
    std::filesystem::remove(a);
    REQUIRE(told_within(watched, 5.0));
    CHECK(watched.changed()[0] == a);
}

TEST_CASE("a change back to what was known takes the offer back") {
    const tests::OwnFolder folder;
    const std::filesystem::path a = folder.write("a.toml", "one");
    const auto time = std::filesystem::last_write_time(a);
    WatchedFiles watched;
    watched.watch({a});
    std::filesystem::last_write_time(a, time + std::chrono::seconds(3));
    REQUIRE(told_within(watched, 5.0));
    std::filesystem::last_write_time(a, time);
    REQUIRE(told_within(watched, 5.0));
    CHECK(watched.changed().empty());
}

TEST_CASE("a case's files are its own and those it names") {
    const std::vector<std::filesystem::path> files =
        scenes::files_of(scenes::read_case("cases/cable-hook/case.toml"));
    std::string names;
    for (const std::filesystem::path& file : files) {
        CHECK(std::filesystem::exists(file));
        names += file.filename().string() + " ";
    }
    CHECK(names == "case.toml stainless-1.4301.toml bench-60.toml 1.2842.toml 1.2379.toml 1.2312.toml ");
}

TEST_CASE("what is wrong with a file is told with the text of its line") {
    const tests::OwnFolder folder;
    const std::string text =
        tests::replaced(tests::small_case, "thickness_mm = 1.0", "  thickness_mm = -1.0  # thin");
    const std::filesystem::path file = folder.write("case.toml", text);
    try {
        scenes::read_case(file);
        FAIL("it was accepted");
    } catch (const std::exception& error) {
        const std::string words = scenes::trouble_words(error);
        CHECK(words.find("strip.thickness_mm") != std::string::npos);
        CHECK(words.find("\nline 6:  thickness_mm = -1.0  # thin") != std::string::npos);
    }
    CHECK(scenes::trouble_words(std::runtime_error("no")) == "no");
}
