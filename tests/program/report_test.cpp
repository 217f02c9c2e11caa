// The command `report` from outside: what it leaves, says and refuses. What is on the page is checked in
// tests/report, how it behaves in tests/browser.

#include <doctest/doctest.h>

#include <string>

#include "tests/files/own_folder.h"
#include "tests/files/small_case.h"
#include "tests/program/run_overbend.h"

using namespace overbend::tests;

TEST_CASE("report: one whole page, told with its size, and the same bytes from another folder") {
    const OwnFolder folder;
    const std::string file = folder.write("case.toml", small_case).string();
    const Run run = run_overbend("report '" + file + "' --only page --out '" + folder / "one" + "'");
    CHECK(run.status == 0);
    CHECK(run.error.empty());
    CHECK(run.out.find(folder / "one/report.html" + ": 0.") == 0);
    CHECK(files_below(folder / "one").size() == 1);
    const std::string page = files_below(folder / "one").at("report.html");
    CHECK(page.rfind("<!DOCTYPE html>\n", 0) == 0);
    CHECK(page.find("</html>") != std::string::npos);
    CHECK(page.find("Small step") != std::string::npos);
    CHECK(page.find(folder / "") == std::string::npos);  // nothing of where it was made
    const Run again =
        run_overbend("report '" + file + "' --only page --quiet --out '" + folder / "two" + "'");
    CHECK(again.status == 0);
    CHECK(again.out.empty());
    CHECK(files_below(folder / "two").at("report.html") == page);
}

TEST_CASE("report: a verdict of no is a page all the same, and the status says it") {
    const OwnFolder folder;
    const std::string file =
        folder.write("case.toml", replaced(small_case, "free_deg = 60.0", "free_deg = 50.0")).string();
    CHECK(run_overbend("report '" + file + "' --only page --quiet --out '" + folder / "out" + "'").status ==
          1);
    CHECK(files_below(folder / "out").at("report.html").find("Not feasible: ") != std::string::npos);
}

TEST_CASE("report: its parts can be chosen, and what is none is refused with those that are") {
    const OwnFolder folder;
    const std::string file = folder.write("case.toml", small_case).string();
    const Run run =
        run_overbend("report --only sheets,page '" + file + "' --quiet --out '" + folder / "out" + "'");
    CHECK(run.status == 0);
    const Files files = files_below(folder / "out");
    CHECK(files.size() == 2);
    CHECK(files.count("report.html") == 1);
    CHECK(files.count("sheets.pdf") == 1);
    const Run wrong = run_overbend("report '" + file + "' --only pages --out '" + folder / "out" + "'");
    CHECK(wrong.status == 2);
    CHECK(wrong.error.find("--only") != std::string::npos);
    CHECK(wrong.error.find("figures") != std::string::npos);
}

TEST_CASE("report: a job that cannot be computed leaves nothing") {
    const OwnFolder folder;
    const std::string file = folder.write("case.toml", unsolvable_case()).string();
    const Files before = files_below(folder / "");
    const Run run = run_overbend("report '" + file + "' --only page --out '" + folder / "out" + "'");
    CHECK(run.status == 3);
    CHECK(run.out.empty());
    CHECK(run.error.rfind("overbend: step 'first': ", 0) == 0);
    CHECK(files_below(folder / "") == before);
}

TEST_CASE("report: an --out that can be no folder is refused, and all stays as it was") {
    const OwnFolder folder;
    const std::string file = folder.write("case.toml", small_case).string();
    folder.write("file", "kept");
    const Files before = files_below(folder / "");
    for (const std::string& out : {folder / "file", std::string("/proc/new"), std::string()}) {
        CAPTURE(out);
        const Run run = run_overbend("report '" + file + "' --only page --out '" + out + "'");
        CHECK(run.status == 2);
        CHECK(run.error.rfind("overbend: --out: ", 0) == 0);
        CHECK(files_below(folder / "") == before);
    }
}

TEST_CASE("report: on a full disk no half of a page is left, and an older one stays") {
    const OwnFolder folder;
    const std::string file = folder.write("case.toml", small_case).string();
    folder.write("out/report.html", "older");
    // A disk that takes no more than 20 kB a file; the page is larger.
    const Run run = run_overbend("report '" + file + "' --only page --out '" + folder / "out" + "'",
                                 "trap '' XFSZ; ulimit -f 40; ");
    CAPTURE(run.error);
    CHECK(run.status == 3);
    CHECK(run.error.find(folder / "out/report.html") != std::string::npos);
    const Files left = files_below(folder / "out");
    CHECK(left.size() == 1);
    CHECK(left.at("report.html") == "older");
}
