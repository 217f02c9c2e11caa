// What the pages name exists: files that they link to, show or name, and options of the commands.

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <regex>

#include "tests/house/read_text.h"
#include "tests/house/rules.h"

using namespace overbend::tests;

namespace {

std::vector<std::string> pages() {
    std::vector<std::string> all = files_under("assets/manual", {".md"});
    all.insert(all.end(), {"README.md", "DEVELOPERS.md", "CHANGELOG.md"});
    return all;
}

}  // namespace

TEST_SUITE("house") {
    TEST_CASE("links, pictures and paths in the pages lead somewhere") {
        for (const std::string& page : pages()) {
            CAPTURE(page);
            const std::string text = text_of(page);
            for (const std::string& file : linked_files(text)) {
                CAPTURE(file);
                CHECK(std::filesystem::exists(std::filesystem::path(folder_of(page)) / file));
            }
            for (const std::string& path : named_paths(text)) {
                CAPTURE(path);
                CHECK(std::filesystem::exists(path));
            }
        }
        CHECK_FALSE(linked_files(text_of("README.md")).empty());
        CHECK_FALSE(named_paths(text_of("DEVELOPERS.md")).empty());
    }

    TEST_CASE("every page of the manual and every picture can be found from the manual's first page") {
        std::string text = text_of("assets/manual/README.md");
        for (const std::string& page : files_under("assets/manual", {".md"})) {
            const std::string name = page.substr(folder_of(page).size() + 1);
            CAPTURE(name);
            if (name != "README.md") CHECK(text.find("](" + name + ")") != std::string::npos);
        }
        for (const std::string& page : files_under("assets/manual", {".md"})) text += text_of(page);
        for (const std::string& picture : files_under("assets/pictures", {".png"})) {
            CAPTURE(picture);
            CHECK(text.find("](../" + picture.substr(7) + ")") != std::string::npos);
        }
    }

    TEST_CASE("the README is short") {
        const std::string readme = text_of("README.md");
        CHECK(std::count(readme.begin(), readme.end(), '\n') <= 150);
    }

    TEST_CASE("every option of the commands is in the manual") {
        const std::string manual = text_of("assets/manual/commands.md");
        const std::regex option("\"(--[a-z-]+)\"");
        int options = 0;
        for (const std::string& path : files_under("scenes/commands", {".cpp"})) {
            const std::string text = text_of(path);
            for (std::sregex_iterator it(text.begin(), text.end(), option), end; it != end; ++it, ++options) {
                const std::string name = (*it)[1];
                CAPTURE(path);
                CAPTURE(name);
                CHECK(std::regex_search(manual, std::regex(name + "(?![a-z-])")));
            }
        }
        CHECK(options > 10);
    }

    TEST_CASE("every control of the window that has a key of its own is in the manual") {
        const std::string manual = text_of("assets/manual/window.md");
        const std::regex control("\"([A-Z][^\"%]*)\",\\s*\\{?(?:K|sf::Keyboard)::");
        int controls = 0;
        for (const std::string& path : files_under("scenes/window", {".cpp"})) {
            const std::string text = text_of(path);
            for (std::sregex_iterator it(text.begin(), text.end(), control), end; it != end;
                 ++it, ++controls) {
                const std::string words = (*it)[1];
                const std::string name = words.substr(0, words.find_first_of(":,"));
                CAPTURE(path);
                CAPTURE(name);
                CHECK(manual.find(name) != std::string::npos);
            }
        }
        CHECK(controls > 30);
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
