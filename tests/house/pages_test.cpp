// What the pages name exists: files that they link to, show or name, and options of the commands.

#include <doctest/doctest.h>

#include <filesystem>
#include <regex>

#include "tests/house/read_text.h"
#include "tests/house/rules.h"

using namespace overbend::tests;

TEST_SUITE("house") {
    TEST_CASE("links, pictures and paths in the pages lead somewhere") {
        for (const std::string page : {"README.md", "DEVELOPERS.md", "CHANGELOG.md"}) {
            CAPTURE(page);
            const std::string text = text_of(page);
            for (const std::string& file : linked_files(text)) {
                CAPTURE(file);
                CHECK(std::filesystem::exists(file));
            }
            for (const std::string& path : named_paths(text)) {
                CAPTURE(path);
                CHECK(std::filesystem::exists(path));
            }
        }
        CHECK_FALSE(linked_files(text_of("README.md")).empty());
        CHECK_FALSE(named_paths(text_of("DEVELOPERS.md")).empty());
    }

    TEST_CASE("every option of the commands is in the README") {
        const std::string readme = text_of("README.md");
        const std::regex option("\"(--[a-z-]+)\"");
        int options = 0;
        for (const std::string& path : files_under("scenes/commands", {".cpp"})) {
            const std::string text = text_of(path);
            for (std::sregex_iterator it(text.begin(), text.end(), option), end; it != end; ++it, ++options) {
                const std::string name = (*it)[1];
                CAPTURE(path);
                CAPTURE(name);
                CHECK(std::regex_search(readme, std::regex(name + "(?![a-z-])")));
            }
        }
        CHECK(options > 10);
    }

    TEST_CASE("every folder of the program is on the map") {
        const std::string map = text_of("DEVELOPERS.md");
        for (const std::string root : {"sim", "render", "scenes"})
            for (const std::string& lists : files_under(root, {"CMakeLists.txt"})) {
                const std::string folder = folder_of(lists);
                CAPTURE(folder);
                if (folder != root) CHECK(map.find("`" + folder + "`") != std::string::npos);
            }
    }
}
