// Files that are changed while they are open: noticed, read again, offered, or told with the line that is
// wrong.

#include "scenes/window/panels/watched_file.h"

#include <doctest/doctest.h>

#include <SFML/System/Clock.hpp>
#include <SFML/System/Sleep.hpp>

#include "scenes/files/case/named_files.h"
#include "scenes/files/case/read_case.h"
#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"

using namespace overbend;
using tests::replaced;
using tests::small_case;

namespace {

// Looks until there are other news, at most so many seconds.
bool told(window::WatchedFile& watched, double seconds = 20.0) {
    const sf::Clock clock;
    while (clock.getElapsedTime().asSeconds() < seconds) {
        if (watched.look()) return true;
        sf::sleep(sf::milliseconds(5));
    }
    return false;
}

// Long enough for two looks and more.
constexpr double a_while = 1.6;

std::string thicker() {
    return replaced(small_case, "thickness_mm = 1.0", "thickness_mm = 1.2");
}
std::string wrong() {
    return replaced(small_case, "thickness_mm = 1.0", "thickness_mm = -1");
}

struct Watched {
    explicit Watched(const std::string& text = small_case) : file(folder.write("case.toml", text)) {
        watched.watch(files::read_case(file));
        CHECK_FALSE(told(watched, a_while));
    }
    void write(const std::string& text) { folder.write("case.toml", text); }
    tests::OwnFolder folder;
    std::filesystem::path file;
    window::WatchedFile watched;
};

}  // namespace

TEST_CASE("a case names its card, rack, press, steels and outlines, each once") {
    const tests::OwnFolder folder;
    std::filesystem::copy_file("assets/materials/dc01.toml", folder / "mild.toml");
    const std::filesystem::path file =
        folder.write("case.toml", replaced(small_case, "\"dc01\"", "\"mild.toml\""));
    const std::vector<std::filesystem::path> files = files::files_of(files::read_case(file));
    REQUIRE(files.size() == 2);
    CHECK(files[0] == file);
    CHECK(std::filesystem::equivalent(files[1], folder / "mild.toml"));

    for (const std::filesystem::path& each :
         files::files_of(files::read_case("cases/cable-hook/case.toml"))) {
        CAPTURE(each.string());
        CHECK(std::filesystem::is_regular_file(each));
    }
    CHECK(files::files_of(files::read_case("cases/cable-hook/case.toml")).size() >= 2);
}

TEST_CASE("a change on disk is told with the case as it is now") {
    Watched on;
    on.write(thicker());
    REQUIRE(told(on.watched));
    REQUIRE(on.watched.news());
    CHECK(on.watched.news()->changed == std::vector<std::filesystem::path>{on.file});
    CHECK_FALSE(on.watched.news()->now.trouble);
    REQUIRE(on.watched.news()->now.c);
    CHECK(on.watched.news()->now.c->thickness == 1.2);
    // Once.
    CHECK_FALSE(told(on.watched, a_while));
    // Taken in: nothing is news.
    on.watched.watch(*on.watched.news()->now.c);
    CHECK_FALSE(told(on.watched, a_while));
    CHECK_FALSE(on.watched.news());
}

TEST_CASE("a change between reading and the first look is told") {
    const tests::OwnFolder folder;
    const std::filesystem::path file = folder.write("case.toml", small_case);
    const files::Case c = files::read_case(file);
    window::WatchedFile watched;
    watched.watch(c);
    sf::sleep(sf::milliseconds(50));  // coarser than the clock of any file system here
    folder.write("case.toml", thicker());
    REQUIRE(told(watched));
    REQUIRE(watched.news()->now.c);
    CHECK(watched.news()->now.c->thickness == 1.2);
}

TEST_CASE("what is wrong in a changed file is told with its line, and no more when it is mended") {
    Watched on;
    on.write(wrong());
    REQUIRE(told(on.watched));
    REQUIRE(on.watched.news()->now.trouble);
    const window::FileTrouble& trouble = *on.watched.news()->now.trouble;
    CHECK(trouble.line == tests::line_of(wrong(), "thickness_mm = -1"));
    CHECK(trouble.text == "thickness_mm = -1");
    CHECK(trouble.place_words() ==
          "case.toml, line " + std::to_string(trouble.line) + ", strip.thickness_mm");
    CHECK_FALSE(on.watched.news()->now.c);

    on.write(thicker());
    REQUIRE(told(on.watched));
    CHECK_FALSE(on.watched.news()->now.trouble);
    CHECK(on.watched.news()->now.c);

    std::filesystem::remove(on.file);
    REQUIRE(told(on.watched));
    REQUIRE(on.watched.news()->now.trouble);
    CHECK(on.watched.news()->now.trouble->wrong == "there is no such file");
    CHECK(on.watched.news()->now.trouble->text.empty());
}

TEST_CASE("a card that the case names is watched too, and its mistakes are its own") {
    const tests::OwnFolder folder;
    const std::string card = tests::bytes_of("assets/materials/dc01.toml");
    folder.write("mild.toml", card);
    const std::filesystem::path file =
        folder.write("case.toml", replaced(small_case, "\"dc01\"", "\"mild.toml\""));
    window::WatchedFile watched;
    watched.watch(files::read_case(file));
    CHECK_FALSE(told(watched, a_while));
    folder.write("mild.toml", card + "\nnonsense = 3\n");
    REQUIRE(told(watched));
    REQUIRE(watched.news()->changed.size() == 1);
    CHECK(watched.news()->changed[0].filename() == "mild.toml");
    REQUIRE(watched.news()->now.trouble);
    CHECK(std::filesystem::path(watched.news()->now.trouble->file).filename() == "mild.toml");
    CHECK(watched.news()->now.trouble->text == "nonsense = 3");
}

TEST_CASE("a case that names another file is watched with that one") {
    Watched on;
    on.folder.write("mild.toml", tests::bytes_of("assets/materials/dc01.toml") + "\nnonsense = 3\n");
    on.write(replaced(small_case, "\"dc01\"", "\"mild.toml\""));
    REQUIRE(told(on.watched));
    REQUIRE(on.watched.news()->now.trouble);
    on.folder.write("mild.toml", tests::bytes_of("assets/materials/dc01.toml"));
    REQUIRE(told(on.watched));
    CHECK_FALSE(on.watched.news()->now.trouble);
    CHECK(on.watched.news()->now.c);
}

TEST_CASE("a file that is still being written is not read") {
    Watched on;
    const sf::Clock clock;
    std::string text = small_case;
    while (clock.getElapsedTime().asSeconds() < a_while) {
        on.write(text += "# more\n");
        REQUIRE_FALSE(on.watched.look());
        sf::sleep(sf::milliseconds(20));
    }
    CHECK(told(on.watched));
}

TEST_CASE("what was dismissed is not reported again, the next change is") {
    Watched on;
    on.write(thicker());
    REQUIRE(told(on.watched));
    on.watched.dismiss();
    CHECK_FALSE(told(on.watched, a_while));
    on.write(small_case + "# a remark\n");
    REQUIRE(told(on.watched));
    CHECK(on.watched.news());
}
