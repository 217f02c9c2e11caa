// Each call that changes a file fails once, and each allocation: whichever it is, a folder holds the files of
// before or those of a run to the end, no half ones and none under way, and the program ends with a status
// and a sentence.
//
// Here    one in many calls; all of them, and the first 2000 allocations, with OVERBEND_EACH_FAULT=1.

#include <doctest/doctest.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <string>

#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"
#include "tests/program/run_overbend.h"

using namespace overbend::tests;

namespace {

bool each() {
    return std::getenv("OVERBEND_EACH_FAULT") != nullptr;
}

struct Fault {
    Run run;
    std::string failed;  // what did; empty: there were fewer calls
};

Fault run_with(const OwnFolder& folder, const std::string& fault, const std::string& options) {
    Fault result;
    const std::string said = folder / "said";
    std::filesystem::remove(said);
    result.run = run_overbend(
        options, "LD_PRELOAD='" OVERBEND_FAULTS "' OVERBEND_FAIL_SAID='" + said + "' " + fault + " ");
    if (std::filesystem::exists(said)) result.failed = bytes_of(said);
    return result;
}

// A file is a new one or as it was, with nothing between. Two whole runs write the same bytes.
void check_old_or_new(const Files& found, const Files& before, const Files& whole) {
    for (const auto& [name, bytes] : found) {
        CAPTURE(name);
        CHECK(name.find(".overbend-") == std::string::npos);
        const auto old = before.find(name), fresh = whole.find(name);
        const bool is_old = old != before.end() && old->second == bytes;
        const bool is_new = fresh != whole.end() && fresh->second == bytes;
        const bool old_or_new = is_old || is_new;
        CHECK(old_or_new);
    }
    for (const auto& [name, bytes] : before) {
        CAPTURE(name);
        CHECK(found.count(name) == 1);
    }
}

// What a command writes into a folder that holds the results of another case.
struct Command {
    std::string words;
    int stride;  // of the calls, where not each is tried
};

int faults_of(const Command& command, const std::string& lasts) {
    const OwnFolder folder;
    const std::string now = "'" + folder.write("now.toml", small_case).string() + "'";
    const std::string earlier =
        "'" + folder.write("earlier.toml", replaced(small_case, "Small step", "Earlier step")).string() + "'";
    const auto line = [&](const std::string& file, const std::string& out) {
        return replaced(command.words, "CASE", file) + " --quiet --out '" + folder / out + "'";
    };
    REQUIRE(run_overbend(line(earlier, "before")).status <= 1);
    const Files before = files_below(folder / "before");
    std::filesystem::copy(folder / "before", folder / "whole", std::filesystem::copy_options::recursive);
    REQUIRE(run_overbend(line(now, "whole")).status <= 1);
    const Files whole = files_below(folder / "whole");
    REQUIRE(whole != before);

    for (int call = 1;; call += each() ? 1 : command.stride) {
        CAPTURE(command.words);
        CAPTURE(call);
        std::filesystem::remove_all(folder / "out");
        std::filesystem::copy(folder / "before", folder / "out", std::filesystem::copy_options::recursive);
        const Fault fault =
            run_with(folder, "OVERBEND_FAIL_WRITE=" + std::to_string(call) + lasts, line(now, "out"));
        const Files found = files_below(folder / "out");
        if (fault.failed.empty()) {
            CHECK(found == whole);
            return call;
        }
        CAPTURE(fault.failed);
        CAPTURE(fault.run.error);
        check_old_or_new(found, before, whole);
        if (found == whole) continue;  // what failed was nothing of ours, as a cache of fonts
        const bool not_done = fault.run.status == 3 || fault.run.status == 2;  // 2: --out is no good folder
        CHECK(not_done);
        CHECK(fault.run.error.rfind("overbend: ", 0) == 0);
        CHECK(fault.run.error.find('\n') == fault.run.error.size() - 1);
    }
}

}  // namespace

TEST_CASE("a call that fails leaves each file old or new") {
    for (const Command& command :
         {Command{"check CASE", 1}, Command{"plan CASE", 1}, Command{"blank CASE", 1},
          Command{"drawings CASE", 3}, Command{"report CASE", 17},
          Command{"film CASE --formats png --rate 1 --size 320x180", 5}}) {
        const int once = faults_of(command, ""), lasting = faults_of(command, " OVERBEND_FAIL_LASTS=1");
        std::printf("%s: %d calls, %d when they go on failing\n", command.words.c_str(), once, lasting);
        CHECK(once > 4);
    }
}

TEST_CASE("without memory there is a sentence and no file") {
    const OwnFolder folder;
    const std::string file = "'" + folder.write("case.toml", small_case).string() + "'";
    for (const std::string command : {"check", "plan"}) {
        int ended = 0;
        for (int call = 1; call <= 2000; call += each() ? 1 : 61) {
            CAPTURE(command);
            CAPTURE(call);
            std::filesystem::remove_all(folder / "out");
            const Fault fault = run_with(folder, "OVERBEND_FAIL_NEW=" + std::to_string(call),
                                         command + " " + file + " --quiet --out '" + folder / "out" + "'");
            REQUIRE(fault.failed == "new");
            CAPTURE(fault.run.error);
            for (const auto& [name, bytes] : files_below(folder / "out"))
                CHECK(name.find(".overbend-") == std::string::npos);
            if (fault.run.status <= 1 && fault.run.status >= 0) continue;  // it was not needed
            ++ended;
            CHECK(fault.run.status == 3);
            CHECK(fault.run.error.find("memory") != std::string::npos);
        }
        std::printf("%s: ended by %d of the first 2000 allocations that were tried\n", command.c_str(),
                    ended);
        CHECK(ended > 0);
    }
}
