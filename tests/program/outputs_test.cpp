// What is written and printed, when writing and printing fail: each is told, and nothing half is left.

#include <doctest/doctest.h>

#include <string>

#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"
#include "tests/program/run_overbend.h"

using namespace overbend::tests;

namespace {

bool any_unfinished(const OwnFolder& folder) {
    for (const auto& [name, bytes] : files_below(folder.path()))
        if (name.find(".overbend-") != std::string::npos) return true;
    return false;
}

}  // namespace

TEST_CASE("a limit of file size is an error with a reason, and leaves nothing") {
    const OwnFolder folder;
    const std::string file = folder.write("case.toml", small_case).string();
    for (const std::string command : {"check", "drawings", "report"}) {
        CAPTURE(command);
        const Run run = run_overbend(command + " '" + file + "' --quiet --out '" + folder / command + "'",
                                     "ulimit -f 1; ");
        CHECK(run.status == 3);
        CHECK(run.error.find("cannot be written: File too large") != std::string::npos);
        CHECK_FALSE(any_unfinished(folder));
    }
}

TEST_CASE("a signal at any time leaves whole files and no others") {
    const OwnFolder folder;
    const std::string file = folder.write("case.toml", small_case).string();
    for (const std::string signal : {"INT", "TERM", "HUP"})
        for (int hundredths = 5; hundredths < 60; hundredths += 5) {
            CAPTURE(signal);
            CAPTURE(hundredths);
            const Run run = run_overbend("report '" + file + "' --quiet --out '" + folder / "out" + "'",
                                         "timeout --preserve-status -s " + signal + " 0." +
                                             std::to_string(100 + hundredths).substr(1) + " ");
            CHECK_FALSE(any_unfinished(folder));
        }
}
