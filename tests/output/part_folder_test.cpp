// A folder is exchanged whole, or what stood there stays.

#include "render/output/part_folder.h"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <stdexcept>
#include <string>

#include "tests/files/own_folder.h"

namespace {

namespace fs = std::filesystem;
using overbend::output::PartFolder;
using overbend::tests::bytes_of;
using overbend::tests::Files;
using overbend::tests::files_below;
using overbend::tests::OwnFolder;

bool is_frame(const std::string& name) {
    return name.rfind("frame", 0) == 0;
}

void put(const fs::path& file, const std::string& text) {
    std::ofstream(file) << text;
}

}  // namespace

TEST_CASE("A folder takes its name with all that is in it, and keeps what others have put there") {
    const OwnFolder folder;
    {
        PartFolder part(folder.path() / "job");
        put(part.place() / "frame_1", "first");
        put(part.place() / "frame_2", "first");
        part.give_name(is_frame);
    }
    folder.write("job/notes", "kept");
    folder.write("job/inner/frame_9", "kept");
    PartFolder part(folder.path() / "job");
    put(part.place() / "frame_1", "second");
    CHECK(bytes_of(folder.path() / "job" / "frame_1") == "first");
    part.give_name(is_frame);
    CHECK(files_below(folder.path()) == Files{{"job/", ""},
                                              {"job/frame_1", "second"},
                                              {"job/notes", "kept"},
                                              {"job/inner/", ""},
                                              {"job/inner/frame_9", "kept"}});
}

TEST_CASE("Without its name it goes, and what stood there stays") {
    const OwnFolder folder;
    folder.write("job/frame_1", "earlier");
    {
        const PartFolder part(folder.path() / "job");
        put(part.place() / "frame_1", "later");
    }
    CHECK(files_below(folder.path()) == Files{{"job/", ""}, {"job/frame_1", "earlier"}});
}

TEST_CASE("Two at a time leave one of them, whole") {
    const OwnFolder folder;
    PartFolder one(folder.path() / "job"), other(folder.path() / "job");
    CHECK(one.place() != other.place());
    put(one.place() / "frame_1", "one");
    put(other.place() / "frame_2", "other");
    one.give_name(is_frame);
    other.give_name(is_frame);
    CHECK(files_below(folder.path()) == Files{{"job/", ""}, {"job/frame_2", "other"}});
}

TEST_CASE("A link to a folder stays, and a file in the way is told") {
    const OwnFolder folder, elsewhere;
    fs::create_directory_symlink(elsewhere.path(), folder.path() / "job");
    PartFolder part(folder.path() / "job");
    put(part.place() / "frame_1", "text");
    part.give_name(is_frame);
    CHECK(fs::is_symlink(folder.path() / "job"));
    CHECK(bytes_of(elsewhere.path() / "frame_1") == "text");
    folder.write("file", "in the way");
    CHECK_THROWS_WITH_AS(PartFolder(folder.path() / "file"), doctest::Contains("in the way"),
                         std::runtime_error);
    CHECK_THROWS_WITH_AS(PartFolder(folder.path() / "missing" / "job"), doctest::Contains("No such file"),
                         std::runtime_error);
    CHECK(bytes_of(folder.path() / "file") == "in the way");
}
