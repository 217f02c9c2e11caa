// The manual and the README against the program: every command that they show runs, and prints what they say.
//
//   ```toml, first line "# NAME.toml ..."   a file, written beside the commands
//   ```sh                                    commands; those that begin with overbend are run
//   ```sh status 2                           the same; they are refused with this exit status
//   ```sh slow                               commands that take long or open a window: only their options are
//                                            looked up in the help
//   ```text right behind ```sh               what its commands print
//
// Written again by OVERBEND_RENEW_MANUAL=1 build/release/tests/program/test_program -tc='manual:*': look at
// the difference before it is committed.

#include <doctest/doctest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>

#include "tests/files/own_folder.h"
#include "tests/files/rounding.h"
#include "tests/program/manual_page.h"
#include "tests/program/run_overbend.h"

using namespace overbend::tests;
using nlohmann::json;
namespace fs = std::filesystem;

namespace {

std::vector<std::string> pages() {
    std::vector<std::string> found = {"README.md"};
    for (const auto& entry : fs::directory_iterator("assets/manual"))
        if (entry.path().extension() == ".md") found.push_back(entry.path().string());
    std::sort(found.begin(), found.end());
    return found;
}

// How long something took is another figure every time.
std::string without_times(const std::string& text) {
    return std::regex_replace(text, std::regex("[0-9]+ ms"), "0 ms");
}

// The file that a block is, by its first line; empty when it is none.
std::string file_name(const Block& block) {
    std::smatch name;
    const std::string first = block.text.substr(0, block.text.find('\n'));
    return std::regex_search(first, name, std::regex("^# ([a-z0-9.-]+\\.toml)\\b")) ? name[1].str() : "";
}

// Every option that a command names is in its help.
void check_options(const std::string& command) {
    CAPTURE(command);
    const std::string name = command.substr(0, command.find(' '));
    const Run help = run_overbend(name + " --help");
    CHECK(help.status == 0);
    const std::regex option("--[a-z-]+");
    for (std::sregex_iterator it(command.begin(), command.end(), option), end; it != end; ++it) {
        CAPTURE(it->str());
        CHECK(std::regex_search(help.out, std::regex(it->str() + "(?![a-z-])")));
    }
}

// Runs the commands of a page in a folder of its own, and compares or renews what they print.
void run_page(const std::string& path, bool renew) {
    const OwnFolder folder;
    fs::create_directory_symlink(fs::absolute("cases"), folder.path() / "cases");
    const std::string there = "cd '" + folder.path().string() + "' && ";
    std::string page = bytes_of(path), printed;
    std::size_t grown = 0;  // of the page, by what was renewed before
    bool ran = false;
    for (const Block& block : blocks_of(page)) {
        if (block.fence == "toml" && !file_name(block).empty()) folder.write(file_name(block), block.text);
        if (block.fence == "sh slow")
            for (const std::string& command : overbend_commands(block)) check_options(command);
        if (block.fence == "text" && ran) {
            CAPTURE(printed);
            CAPTURE(block.text);
            if (renew) {
                page.replace(block.begin + grown, block.text.size(), printed);
                grown += printed.size() - block.text.size();
            } else {
                CHECK(same_but_for_rounding(without_times(block.text), without_times(printed)));
            }
        }
        ran = false, printed.clear();
        const bool refused = block.fence == "sh status 2";
        if (block.fence != "sh" && !refused) continue;
        for (const std::string& command : overbend_commands(block)) {
            CAPTURE(command);
            const Run run = run_overbend(command, there);
            CAPTURE(run.error);
            CHECK((refused ? run.status == 2 : run.status == 0 || run.status == 1));
            printed += run.out.empty() ? run.error : run.out;
            ran = true;
        }
    }
    if (renew) std::ofstream(path, std::ios::binary) << page;
}

void add_keys(const json& value, std::set<std::string>& keys) {
    if (value.is_array())
        for (const json& one : value) add_keys(one, keys);
    if (!value.is_object()) return;
    for (const auto& [key, inner] : value.items()) {
        keys.insert(key);
        if (key != "sizes") add_keys(inner, keys);  // of tools: named by their words
    }
}

}  // namespace

TEST_CASE("manual: every command runs and prints what the page says") {
    const bool renew = std::getenv("OVERBEND_RENEW_MANUAL") != nullptr;
    for (const std::string& path : pages()) {
        CAPTURE(path);
        run_page(path, renew);
    }
}

TEST_CASE("manual: every command has its section") {
    const std::string help = run_overbend("--help").out, page = bytes_of("assets/manual/commands.md");
    const std::string list = help.substr(help.rfind("ubcommands:"));
    const std::regex command("\n  ([a-z]+) ");
    int commands = 0;
    for (std::sregex_iterator it(list.begin(), list.end(), command), end; it != end; ++it, ++commands) {
        const std::string heading = "\n## " + (*it)[1].str() + "\n";
        CAPTURE(heading);
        CHECK(page.find(heading) != std::string::npos);
    }
    CHECK(commands > 10);
}

TEST_CASE("manual: every key of the JSON output is explained") {
    const std::string page = bytes_of("assets/manual/results.md");
    const std::string hook = "cases/cable-hook/case.toml", rail = "cases/channel-with-pad/case.toml";
    const std::string strip = "--material dc01 --thickness 1 ";
    std::set<std::string> keys;
    for (const std::string& command : std::vector<std::string>{
             "check " + hook, "check " + rail, "check cases/wrong-order/case.toml", "blank " + hook,
             "tools " + rail, "cost " + hook + " --against " + hook, "list",
             "moment " + strip + "--curvatures 0.1", "card tests/tensile/records/al6061-t6_nm-rd-01.csv",
             "table " + strip + "--die-opening 8 --shoulder 1 --nose 1 --angles 90,170",
             "bend " + strip + "--die-opening 8 --shoulder 1 --nose 1 --travel 2 --curve",
             "bend --kind channel " + strip +
                 "--punch-width 20 --corner 2 --shoulder 2 --depth 12 --pad-preload 20 --pad-rate 1 --travel "
                 "8",
             "bend --kind hem --material dc04 --thickness 1 --hem 8 --die-opening 9 --shoulder 1 --nose 1 "
             "--force-per-mm 270",
             "bend --kind draw --material dc01 --thickness 0.8 --punch-width 50 --corner 5 --shoulder 5 "
             "--flange 30 --clamp-force 30 --travel 15"}) {
        CAPTURE(command);
        const Run run = run_overbend(command + " --json");
        CAPTURE(run.error);
        REQUIRE(run.status <= 1);
        add_keys(json::parse(run.out), keys);
    }
    CHECK(keys.size() > 100);
    for (const std::string& key : keys) {
        CAPTURE(key);
        CHECK(page.find("`" + key + "`") != std::string::npos);
    }
}
