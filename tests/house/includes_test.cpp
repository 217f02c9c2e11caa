// Every #include in the program goes the way of the house. A header that needs no library links from
// anywhere, so the linker alone does not see a wrong one.

#include <doctest/doctest.h>

#include <filesystem>

#include "tests/house/read_text.h"
#include "tests/house/rules.h"

using namespace overbend::tests;

namespace {

std::vector<std::string> all_sources() {
    std::vector<std::string> all;
    for (const std::string root : {"sim", "render", "scenes"})
        for (const std::string& path : files_under(root, {".h", ".cpp"})) all.push_back(path);
    return all;
}

// Folders of the program that hold files of C++.
std::set<std::string> all_folders() {
    std::set<std::string> folders;
    for (const std::string& path : all_sources()) folders.insert(folder_of(path));
    return folders;
}

void check_none(const std::vector<std::string>& wrong) {
    for (const std::string& finding : wrong) FAIL_CHECK(finding);
}

}  // namespace

TEST_SUITE("house") {
    TEST_CASE("includes keep the direction and are written from the root") {
        for (const std::string& path : all_sources())
            check_none(wrong_includes(path, text_of(path), allowed_folders()));
    }

    TEST_CASE("every folder of sim and render has a rule, and every rule a folder") {
        const std::set<std::string> folders = all_folders();
        for (const std::string& folder : folders) {
            CAPTURE(folder);
            if (folder.compare(0, 6, "scenes") != 0) CHECK(allowed_folders().count(folder) == 1);
        }
        for (const auto& rule : allowed_folders()) {
            CAPTURE(rule.first);
            CHECK(folders.count(rule.first) == 1);
        }
    }

    TEST_CASE("a folder includes only from libraries that its CMakeLists.txt reaches") {
        const std::set<std::string> folders = all_folders();
        AllowedFolders used, reached;
        for (const std::string& folder : folders)
            used[folder] = used_folders(text_of(folder + "/CMakeLists.txt"), folders);
        for (const std::string& folder : folders) reached[folder] = reachable_folders(folder, used);
        for (const std::string& path : all_sources())
            check_none(wrong_includes(path, text_of(path), reached));
    }

    TEST_CASE("a room of scenes includes from itself and the rooms below it") {
        const std::vector<std::string> rooms = {"scenes/files", "scenes/job", "scenes/documents",
                                                "scenes/window", "scenes/commands"};
        const auto height = [&](const std::string& path) {
            for (std::size_t i = 0; i < rooms.size(); ++i)
                if (path.compare(0, rooms[i].size() + 1, rooms[i] + "/") == 0) return static_cast<int>(i);
            return -1;
        };
        for (const std::string& path : all_sources())
            for (const Include& include : includes_in(text_of(path)))
                if (height(path) >= 0 && height(include.name) > height(path))
                    FAIL_CHECK(path << " includes " << include.name << " of a room above it");
        CHECK(height("scenes/window/bench/press.cpp") == 3);
    }

    TEST_CASE("every include of ours exists") {
        for (const std::string& path : all_sources())
            for (const Include& include : includes_in(text_of(path))) {
                CAPTURE(path);
                CAPTURE(include.name);
                if (include.quoted) CHECK(std::filesystem::exists(include.name));
            }
    }

    TEST_CASE("the mechanics neither prints nor reads, and libraries stay in their folders") {
        for (const std::string& path : all_sources()) check_none(wrong_outside_includes(path, text_of(path)));
    }
}
