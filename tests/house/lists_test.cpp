// Every source is built: a file that no CMakeLists.txt lists compiles nowhere and rots.

#include <doctest/doctest.h>

#include <filesystem>
#include <regex>

#include "tests/house/read_text.h"
#include "tests/house/rules.h"

using namespace overbend::tests;

TEST_SUITE("house") {
    TEST_CASE("every source is listed in its folder's CMakeLists.txt") {
        for (const std::string root : {"sim", "render", "scenes", "tests"})
            for (const std::string& path : files_under(root, {".cpp"})) {
                if (path == "tests/main.cpp") continue;  // part of every binary of checks
                CAPTURE(path);
                const std::string folder = folder_of(path);
                const std::string name = path.substr(folder.size() + 1);
                CHECK(listed_sources(text_of(folder + "/CMakeLists.txt")).count(name) == 1);
            }
    }

    TEST_CASE("every listed source exists") {
        for (const std::string root : {"sim", "render", "scenes"})
            for (const std::string& lists : files_under(root, {"CMakeLists.txt"}))
                for (const std::string& name : listed_sources(text_of(lists))) {
                    CAPTURE(lists);
                    CAPTURE(name);
                    CHECK(std::filesystem::exists(folder_of(lists) + "/" + name));
                }
    }

    TEST_CASE("every folder with a CMakeLists.txt is added by the one above it") {
        for (const std::string root : {"sim", "render", "scenes", "tests"})
            for (const std::string& lists : files_under(root, {"CMakeLists.txt"})) {
                const std::string folder = folder_of(lists);
                if (folder == root) continue;
                CAPTURE(folder);
                const std::string above = text_of(folder_of(folder) + "/CMakeLists.txt");
                const std::string name = folder.substr(folder_of(folder).size() + 1);
                CHECK(std::regex_search(above, std::regex("[\\s(]" + name + "[\\s)]")));
            }
    }

    TEST_CASE("every header is read once and says what it is") {
        for (const std::string root : {"sim", "render", "scenes"})
            for (const std::string& path : files_under(root, {".h"})) {
                CAPTURE(path);
                const std::string text = text_of(path);
                CHECK(text.compare(0, 3, "// ") == 0);
                CHECK(text.find("\n#pragma once\n") != std::string::npos);
            }
    }
}
